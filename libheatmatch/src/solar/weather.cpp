#include "heatmatch/solar/weather.hpp"

#include "observation_checks.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double darkest_reading_w_m2 = -10.0;
constexpr double coldest_cell_c = -70.0;
constexpr double hottest_cell_c = 120.0;
constexpr double long_step_hours = 0.25;  // clouds pass within it

Sentence january_or_unknown() {
    return say<"solar.january">(with<"january">(1.0), with<"unknown">(0.0));
}

std::string row_of(const char* field, std::size_t row) {
    return std::string(field) + '[' + std::to_string(row) + ']';
}

/// Checks one irradiance reading; true where a small negative one becomes 0.
bool is_night_offset(double irradiance, std::size_t row) {
    if (!std::isfinite(irradiance)) {
        refuse_weather(row_of("plane_irradiance_w_m2", row), "not a number", "a finite number",
                       say<"solar.leave_out">());
    }
    if (irradiance < darkest_reading_w_m2 || irradiance > brightest_plane_w_m2) {
        refuse_weather(row_of("plane_irradiance_w_m2", row), format_number(irradiance) + " W/m2",
                       ">= -10 W/m2 and <= 1600 W/m2",
                       say<"solar.check_unit">(with<"sun">(1000.0, unit::watt_per_m2)));
    }
    return irradiance < 0.0;
}

void check_cell(double cell_c, std::size_t row) {
    if (cell_c >= coldest_cell_c && cell_c <= hottest_cell_c) return;
    refuse_weather(row_of("cell_temperature_c", row),
                   std::isfinite(cell_c) ? format_number(cell_c) + " °C" : "not a number",
                   ">= -70 °C and <= 120 °C", say<"solar.in_celsius">());
}

/// Month of each row of a common year that begins on January 1st.
std::vector<std::uint8_t> calendar(std::size_t rows, double hours_per_row) {
    std::vector<std::uint8_t> month(rows);
    std::size_t at = 0;
    double ends = days_of_month[0] * 24.0;
    for (std::size_t row = 0; row < rows; ++row) {
        const double middle = (static_cast<double>(row) + 0.5) * hours_per_row;
        while (at < 11 && middle > ends) ends += days_of_month[++at] * 24.0;
        month[row] = static_cast<std::uint8_t>(at + 1);
    }
    return month;
}

void append_row(Weather& to, const Weather& from, std::size_t row, double irradiance, double hours,
                const std::vector<double>& rear) {
    if (!rear.empty()) to.rear_w_m2.push_back(rear[row]);
    if (!from.shaded_share.empty()) to.shaded_share.push_back(from.shaded_share[row]);
    to.irradiance_w_m2.push_back(irradiance);
    to.base_c.push_back(from.base_c[row]);
    to.heating_irradiance_w_m2.push_back(from.heating_irradiance_w_m2[row]);
    to.hours.push_back(hours);
    to.month.push_back(from.month[row]);
}

}  // namespace

double Weather::cell_temperature_c(std::size_t row, double noct_c) const {
    return base_c[row] + heating_irradiance_w_m2[row] * (noct_c - 20.0) / 800.0;
}

double Weather::warming_with(std::size_t row, double share) const {
    if (rear_w_m2.empty()) return heating_irradiance_w_m2[row];
    const double rear = share * rear_w_m2[row];
    const double front = irradiance_w_m2[row];
    // Wind reduces it by the same share as for front light.
    return heating_irradiance_w_m2[row] +
           (front > 0.0 ? rear * heating_irradiance_w_m2[row] / front : rear);
}

double Weather::irradiation_kwh_m2() const {
    double sum = 0.0;
    for (std::size_t row = 0; row < size(); ++row) sum += irradiance_w_m2[row] * hours[row];
    return sum / 1000.0;
}

bool Weather::has_cloud_band() const {
    return step_hours >= long_step_hours && !clear_w_m2.empty() && !overcast_w_m2.empty();
}

Weather weather_from_plane(std::span<const double> irradiance_w_m2,
                           std::span<const double> cell_temperature_c, double hours_per_row,
                           std::span<const std::uint8_t> month) {
    const std::size_t rows = irradiance_w_m2.size();
    const auto expect_rows = [rows](const char* field, std::size_t found) {
        if (found == rows) return;
        refuse_weather(field, std::to_string(found) + " values",
                       std::to_string(rows) + " values, as plane_irradiance_w_m2 has",
                       say<"solar.same_moments">());
    };
    expect_rows("cell_temperature_c", cell_temperature_c.size());
    if (!month.empty()) expect_rows("month", month.size());
    if (!(hours_per_row > 0.0 && hours_per_row <= 24.0)) {
        refuse_weather("hours_per_row", format_number(hours_per_row) + " h", "> 0 h and <= 24 h",
                       say<"solar.hour_or_minute">(with<"one">(1.0), with<"minutes">(60.0)));
    }
    Weather weather{.irradiance_w_m2 = {irradiance_w_m2.begin(), irradiance_w_m2.end()},
                    .base_c = {cell_temperature_c.begin(), cell_temperature_c.end()},
                    .heating_irradiance_w_m2 = std::vector<double>(rows, 0.0),
                    .hours = std::vector<double>(rows, hours_per_row),
                    .month = {month.begin(), month.end()},
                    .step_hours = hours_per_row};
    std::size_t negative = 0;
    for (std::size_t row = 0; row < rows; ++row) {
        check_cell(weather.base_c[row], row);
        if (!is_night_offset(weather.irradiance_w_m2[row], row)) continue;
        weather.irradiance_w_m2[row] = 0.0;
        ++negative;
    }
    if (negative > 0) {
        weather.remarks.push_back(say<"solar.small_negative">(
            with<"readings">(static_cast<double>(negative), unit::count), with<"nothing">(0.0)));
    }
    if (weather.irradiation_kwh_m2() <= 0.0) {
        refuse_weather("plane_irradiance_w_m2", "no sun in " + std::to_string(rows) + " rows",
                       "above 0 W/m2 in some rows", say<"solar.check_columns">());
    }
    constexpr double year_hours = 8760.0;
    const bool is_year = std::fabs(static_cast<double>(rows) * hours_per_row - year_hours) < 25.0;
    if (month.empty() && is_year) {
        weather.month = calendar(rows, hours_per_row);
        weather.assumed.push_back({.part = "weather",
                                   .field = "month",
                                   .value = say<"solar.from_january">(with<"day">(1.0)),
                                   .source = say<"solar.class_default">()});
    }
    weather.month.resize(rows, 0);
    for (std::size_t row = 0; row < rows; ++row) {
        const std::uint8_t m = weather.month[row];
        if (m > 12) {
            refuse_weather(row_of("month", row), std::to_string(m), ">= 0 and <= 12",
                           january_or_unknown());
        }
        if (m > 0) weather.days[m - 1U] += hours_per_row / 24.0;
    }
    return weather;
}

Weather split_by_cloud(const Weather& weather) {
    if (weather.clear_w_m2.size() != weather.size() ||
        weather.overcast_w_m2.size() != weather.size()) {
        refuse_weather("clear_w_m2", "not known",
                       "the sun on the plane under a cloudless sky in each row",
                       say<"solar.frame_or_months">());
    }
    Weather split{.days = weather.days,
                  .step_hours = weather.step_hours,
                  .remarks = weather.remarks,
                  .assumed = weather.assumed,
                  .rear_assumed = weather.rear_assumed};
    for (std::size_t row = 0; row < weather.size(); ++row) {
        const double mean = weather.irradiance_w_m2[row];
        const double sunny = weather.clear_w_m2[row];
        const double overcast = weather.overcast_w_m2[row];
        if (!(sunny > mean && mean > overcast)) {
            append_row(split, weather, row, mean, weather.hours[row], weather.rear_w_m2);
            continue;
        }
        const double share = (mean - overcast) / (sunny - overcast);
        append_row(split, weather, row, sunny, share * weather.hours[row], weather.rear_clear_w_m2);
        append_row(split, weather, row, overcast, (1.0 - share) * weather.hours[row],
                   weather.rear_overcast_w_m2);
    }
    return split;
}

std::array<MonthCover, 12> month_cover(const Weather& weather) {
    constexpr double least_share = 0.25;
    constexpr double dark_share = 0.1;  // in a month of midnight sun there is no night to omit
    std::array<double, 12> sunlit{};
    for (std::size_t row = 0; row < weather.size(); ++row) {
        const std::uint8_t month = weather.month[row];
        if (month > 0 && weather.irradiance_w_m2[row] > 0.0) {
            sunlit[month - 1U] += weather.hours[row];
        }
    }
    std::array<MonthCover, 12> cover;
    for (std::size_t m = 0; m < 12; ++m) {
        const double hours = weather.days[m] * 24.0;
        if (hours <= 0.0) continue;
        cover[m].share = weather.days[m] / days_of_month[m];
        cover[m].has_nights = sunlit[m] < (1.0 - dark_share) * hours || cover[m].share > 0.9;
        if (!cover[m].has_nights) {
            cover[m].factor = 1.0;
        } else if (cover[m].share >= least_share) {
            cover[m].factor = 1.0 / cover[m].share;
        }
    }
    return cover;
}

void check_weather(const Weather& weather) {
    const std::size_t rows = weather.size();
    const auto expect = [rows](const char* field, std::size_t found) {
        if (found == rows) return;
        refuse_weather(field, std::to_string(found) + " values", std::to_string(rows) + " values",
                       say<"solar.each_row">());
    };
    expect("base_c", weather.base_c.size());
    expect("heating_irradiance_w_m2", weather.heating_irradiance_w_m2.size());
    expect("hours", weather.hours.size());
    expect("month", weather.month.size());
    for (std::size_t row = 0; row < rows; ++row) {
        if (weather.month[row] <= 12) continue;
        refuse_weather(row_of("month", row), std::to_string(weather.month[row]), ">= 0 and <= 12",
                       january_or_unknown());
    }
}

void check_months(std::span<const int> months) {
    for (std::size_t i = 0; i < months.size(); ++i) {
        const bool twice =
            std::find(months.begin(), months.begin() + static_cast<std::ptrdiff_t>(i), months[i]) !=
            months.begin() + static_cast<std::ptrdiff_t>(i);
        if (months[i] >= 1 && months[i] <= 12 && !twice) continue;
        Sentences winter;
        for (const double month : {11.0, 12.0, 1.0, 2.0, 3.0}) {
            winter.push_back(sentence_of(Amount{month}));
        }
        refuse_weather("months", std::to_string(months[i]) + (twice ? " (given twice)" : ""),
                       "1 to 12, each once",
                       say<"solar.months">(with<"months">(std::move(winter))));
    }
}

}  // namespace heatmatch
