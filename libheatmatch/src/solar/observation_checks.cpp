#include "observation_checks.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/cell_temperature.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double night_offset_w_m2 = -10.0;

/// An optional list, and the range of its values.
struct Reading {
    const char* field;
    std::span<const double> list;
    double low;
    double high;
    const char* unit;
    Sentence remedy;
    bool is_sun;
};

std::string two_digits(unsigned number) {
    return (number < 10 ? "0" : "") + std::to_string(number);
}

std::string row_of(const char* field, std::size_t row, double unix_time_s) {
    return std::string(field) + '[' + std::to_string(row) + "] at " + utc_text(unix_time_s);
}

void check_times(std::span<const double> times) {
    constexpr double earliest_s = -2208988800.0;  // 1900
    constexpr double latest_s = 7258118400.0;     // 2200
    for (std::size_t row = 0; row < times.size(); ++row) {
        const std::string field = "unix_time_s[" + std::to_string(row) + ']';
        if (!(times[row] >= earliest_s && times[row] <= latest_s)) {
            refuse_weather(
                field,
                std::isfinite(times[row]) ? format_number(times[row]) + " s" : "not a number",
                "between the years 1900 and 2200",
                say<"solar.count_seconds">(with<"beginning">(Name{"1970-01-01 00:00 UTC"})));
        }
        if (row == 0 || times[row] > times[row - 1]) continue;
        refuse_weather(
            field, utc_text(times[row]), "later than the row before, " + utc_text(times[row - 1]),
            times[row] < times[row - 1] ? say<"solar.sort">() : say<"solar.remove_twice">());
    }
}

/// Checks one list; returns its small negative values.
std::size_t check_reading(const Reading& reading, std::span<const double> times) {
    std::size_t negative = 0;
    for (std::size_t row = 0; row < reading.list.size(); ++row) {
        const double value = reading.list[row];
        if (!std::isfinite(value)) {
            refuse_weather(row_of(reading.field, row, times[row]), "not a number",
                           "a finite number", say<"solar.leave_out">());
        }
        if (value < reading.low || value > reading.high) {
            refuse_weather(row_of(reading.field, row, times[row]),
                           format_number(value) + reading.unit,
                           ">= " + format_number(reading.low) + reading.unit +
                               " and <= " + format_number(reading.high) + reading.unit,
                           reading.remedy);
        }
        if (reading.is_sun && value < 0.0) ++negative;
    }
    return negative;
}

}  // namespace

void refuse_weather(std::string field, std::string value, std::string allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = "weather",
                                   .field = std::move(field),
                                   .value = std::move(value),
                                   .allowed = std::move(allowed),
                                   .remedy = std::move(remedy)});
}

std::string utc_text(double unix_time_s) {
    using namespace std::chrono;
    const sys_seconds moment(seconds(static_cast<long long>(std::floor(unix_time_s))));
    const auto day = floor<days>(moment);
    const year_month_day date(day);
    const hh_mm_ss time(moment - day);
    return std::to_string(static_cast<int>(date.year())) + '-' +
           two_digits(static_cast<unsigned>(date.month())) + '-' +
           two_digits(static_cast<unsigned>(date.day())) + ' ' +
           two_digits(static_cast<unsigned>(time.hours().count())) + ':' +
           two_digits(static_cast<unsigned>(time.minutes().count())) + " UTC";
}

std::size_t check_observations(const Observations& given) {
    const Sentence sun_remedy = say<"solar.check_unit">(with<"sun">(1000.0, unit::watt_per_m2));
    const Reading readings[] = {
        {"ghi_w_m2", given.ghi_w_m2, night_offset_w_m2, 1700.0, " W/m2", sun_remedy, true},
        {"dni_w_m2", given.dni_w_m2, night_offset_w_m2, 1400.0, " W/m2", sun_remedy, true},
        {"dhi_w_m2", given.dhi_w_m2, night_offset_w_m2, 1200.0, " W/m2", sun_remedy, true},
        {"air_c", given.air_c, -70.0, 60.0, " °C", say<"solar.in_celsius">(), false},
        {"wind_m_s", given.wind_m_s, 0.0, 80.0, " m/s", say<"solar.in_metres_per_second">(), false},
    };
    if (!(given.label >= 0.0 && given.label <= 1.0)) {
        refuse_weather("label", format_number(given.label), ">= 0 and <= 1",
                       say<"solar.label_of_time">(with<"start">(0.0), with<"end">(1.0)));
    }
    if (!(given.wind_height_m >= 0.1 && given.wind_height_m <= 300.0)) {
        refuse_weather("wind_height_m", format_number(given.wind_height_m) + " m",
                       ">= 0.1 m and <= 300 m",
                       say<"solar.wind_height">(with<"panels">(panel_height_m, unit::metre)));
    }
    const std::size_t rows = given.unix_time_s.size();
    for (const Reading& reading : readings) {
        if (reading.list.empty() || reading.list.size() == rows) continue;
        refuse_weather(reading.field, std::to_string(reading.list.size()) + " values",
                       std::to_string(rows) + " values, as unix_time_s has",
                       say<"solar.all_moments">());
    }
    if (given.air_c.empty()) {
        refuse_weather("air_c", "(missing)", "given", say<"solar.need_air">());
    }
    if (given.ghi_w_m2.empty() && (given.dni_w_m2.empty() || given.dhi_w_m2.empty())) {
        refuse_weather("ghi_w_m2", "(missing)", "given, or dni_w_m2 and dhi_w_m2 instead",
                       say<"solar.need_sun">());
    }
    check_times(given.unix_time_s);
    std::size_t negative = 0;
    for (const Reading& reading : readings) negative += check_reading(reading, given.unix_time_s);
    return negative;
}

TimeSteps time_steps(const Observations& given) {
    const auto times = given.unix_time_s;
    if (times.size() < 2) {
        refuse_weather("unix_time_s", std::to_string(times.size()) + " rows", "2 rows or more",
                       say<"solar.no_length">());
    }
    std::vector<double> differences(times.size() - 1);
    for (std::size_t i = 0; i < differences.size(); ++i) differences[i] = times[i + 1] - times[i];
    std::vector<double> sorted = differences;
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>((sorted.size() - 1) / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    TimeSteps steps{.step_s = *middle};
    constexpr double rounding_s = 0.5;
    if (steps.step_s < 60.0 - rounding_s || steps.step_s > 3600.0 + rounding_s) {
        refuse_weather("unix_time_s", "steps of " + format_number(steps.step_s) + " s",
                       ">= 60 s and <= 3600 s",
                       steps.step_s < 60.0 ? say<"solar.to_minutes">() : say<"solar.hourly">());
    }
    for (const double difference : differences) {
        if (difference < steps.step_s - rounding_s) ++steps.shortened;
        if (difference <= 1.5 * steps.step_s) continue;
        ++steps.gaps;
        steps.missing_s += difference - steps.step_s;
    }
    return steps;
}

}  // namespace heatmatch
