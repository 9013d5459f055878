#include "heatmatch/operation/days/day_weather.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

void check_span(const DaySpan& span) {
    if (span.month < 0 || span.month > 12) {
        throw InvalidInput({.part = "span of days",
                            .field = "month",
                            .value = std::to_string(span.month),
                            .allowed = "1 to 12, or 0 for the first row",
                            .remedy = say<"days.january">(with<"month">(1.0))});
    }
    if (span.days < 0 || span.days > 3660) {
        throw InvalidInput({.part = "span of days",
                            .field = "days",
                            .value = std::to_string(span.days),
                            .allowed = "1 to 3660, or 0 for all",
                            .remedy = say<"days.how_many">()});
    }
    if (!(std::fabs(span.air_shift_k) <= 60.0)) {
        throw InvalidInput({.part = "span of days",
                            .field = "air_shift_k",
                            .value = format_number(span.air_shift_k) + " K",
                            .allowed = "-60 to 60 K",
                            .remedy = say<"days.cold_week">(with<"below">(8.0, unit::kelvin))});
    }
}

/// Sun of a part of one month beside the mean of that month; empty where they differ by less than a
/// twentieth, and for a span of several months.
Sentence sun_of_month(const Weather& weather, const DayWeather& days) {
    if (days.month.empty() || days.month.front() == 0) return {};
    const std::uint8_t month = days.month.front();
    const auto same = [month](std::uint8_t each) { return each == month; };
    if (!std::all_of(days.month.begin(), days.month.end(), same)) return {};
    double month_w_m2 = 0.0;
    std::size_t rows = 0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        if (weather.month[row] != month) continue;
        month_w_m2 += weather.irradiance_w_m2[row];
        ++rows;
    }
    if (rows <= days.size()) return {};
    double days_w_m2 = 0.0;
    for (const double sun : days.irradiance_w_m2) days_w_m2 += sun;
    const auto a_day = [](double sum_w_m2, std::size_t of) {
        return sum_w_m2 / static_cast<double>(of) * hours_of_day / 1000.0;
    };
    const double its = a_day(days_w_m2, days.size());
    const double mean = a_day(month_w_m2, rows);
    constexpr double alike = 0.05;
    if (std::fabs(its - mean) <= alike * mean) return {};
    const auto count = with<"days">(days.hours() / hours_of_day, unit::none, 4);
    const auto sun = with<"sun">(its, unit::kilowatt_hour_per_m2, 2);
    const auto usual = with<"month">(mean, unit::kilowatt_hour_per_m2, 2);
    return its < mean ? say<"days.darker">(count, sun, usual)
                      : say<"days.brighter">(count, sun, usual);
}

}  // namespace

double DayWeather::sun_w_m2(std::size_t row, double rear_share) const {
    return irradiance_w_m2[row] + (rear_w_m2.empty() ? 0.0 : rear_share * rear_w_m2[row]);
}

double DayWeather::cell_temperature_c(std::size_t row, double noct_c, double rear_share) const {
    const double front = irradiance_w_m2[row];
    const double both = front > 0.0 ? sun_w_m2(row, rear_share) / front : 1.0;
    return air_c[row] + heating_irradiance_w_m2[row] * both * (noct_c - 20.0) / 800.0;
}

double DayWeather::hour_of_day(double since_start_h) const {
    return std::fmod(first_hour + since_start_h, hours_of_day);
}

DayWeather day_weather(const Weather& weather, const DaySpan& span) {
    check_weather(weather);
    check_span(span);
    if (!weather.first_hour || weather.size() == 0) {
        throw InvalidInput({.part = "weather",
                            .field = "rows",
                            .value = "in no order of time, with gaps, or without the air",
                            .allowed = "sun and air in equal steps without a gap",
                            .remedy = say<"days.weather_in_order">()});
    }
    std::size_t first = 0;
    std::size_t last = weather.size();
    if (span.month > 0) {
        const auto wanted = static_cast<std::uint8_t>(span.month);
        const auto begin = std::find(weather.month.begin(), weather.month.end(), wanted);
        if (begin == weather.month.end()) {
            throw InvalidInput({.part = "span of days",
                                .field = "month",
                                .value = std::to_string(span.month),
                                .allowed = "a month that the weather has",
                                .remedy = say<"days.other_month">()});
        }
        first = static_cast<std::size_t>(std::distance(weather.month.begin(), begin));
        const auto end = std::find_if(begin, weather.month.end(),
                                      [wanted](std::uint8_t month) { return month != wanted; });
        if (span.days == 0)
            last = static_cast<std::size_t>(std::distance(weather.month.begin(), end));
    }
    const auto wanted_rows =
        static_cast<std::size_t>(std::lround(span.days * hours_of_day / weather.step_hours));
    DayWeather result{.step_h = weather.step_hours,
                      .remarks = weather.remarks,
                      .assumed = weather.assumed,
                      .rear_assumed = weather.rear_assumed};
    if (span.days > 0) {
        // A year of means is periodic: December is followed by January.
        constexpr double year_h = 8760.0;
        const bool goes_round =
            std::fabs(static_cast<double>(weather.size()) * weather.step_hours - year_h) < 1.0;
        if (first + wanted_rows > weather.size() && !goes_round) {
            throw InvalidInput(
                {.part = "span of days",
                 .field = "days",
                 .value = std::to_string(span.days),
                 .allowed = "at most the " +
                            format_number(static_cast<double>(weather.size() - first) *
                                              weather.step_hours / hours_of_day,
                                          4) +
                            " days that the weather has from there on",
                 .remedy = say<"days.fewer">()});
        }
        last = first + wanted_rows;
    }
    result.first_hour = std::fmod(
        *weather.first_hour + static_cast<double>(first) * weather.step_hours, hours_of_day);
    for (std::size_t at = first; at < last; ++at) {
        const std::size_t row = at % weather.size();
        result.irradiance_w_m2.push_back(weather.irradiance_w_m2[row]);
        result.heating_irradiance_w_m2.push_back(weather.heating_irradiance_w_m2[row]);
        if (!weather.rear_w_m2.empty()) result.rear_w_m2.push_back(weather.rear_w_m2[row]);
        result.air_c.push_back(weather.base_c[row] + span.air_shift_k);
        result.bare_share.push_back(std::min(1.0, weather.hours[row] / weather.step_hours));
        result.month.push_back(weather.month[row]);
    }
    result.sun_of_month = sun_of_month(weather, result);
    if (span.air_shift_k != 0.0) {
        const auto shift = with<"shift">(std::fabs(span.air_shift_k), unit::kelvin);
        result.remarks.push_back(span.air_shift_k < 0.0 ? say<"days.air_colder">(shift)
                                                        : say<"days.air_warmer">(shift));
    }
    return result;
}

}  // namespace heatmatch
