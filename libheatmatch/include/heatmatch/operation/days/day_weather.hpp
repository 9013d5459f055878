#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Part of the weather to simulate.
struct DaySpan {
    int month = 0;             //!< month of the first row; 0: first row of the weather
    int days = 0;              //!< number of days; 0: to the end of the weather, or of the month
    double air_shift_k = 0.0;  //!< added to the air temperature; below 0 colder [K]
};

/// Sun and air in order of time, in equal steps.
struct DayWeather {
    std::vector<double> irradiance_w_m2{};          //!< on the cells [W/m2]
    std::vector<double> heating_irradiance_w_m2{};  //!< sun that warms the cells [W/m2]
    std::vector<double> rear_w_m2{};    //!< on the backs of the panels; empty: not known [W/m2]
    std::vector<double> air_c{};        //!< outside [°C]
    std::vector<double> bare_share{};   //!< share of the time that panels are free of snow
    std::vector<std::uint8_t> month{};  //!< 1 to 12; 0: not known
    double step_h = 1.0;
    double first_hour = 0.0;  //!< hour of the day by mean solar time, at the first row [h]
    Sentence sun_of_month{};  //!< sun of these days beside the mean of their month; empty if alike
    Sentences remarks{};
    std::vector<Assumption> assumed{};
    std::vector<Assumption> rear_assumed{};  //!< for rear light only
    /// The same rows on the plane of each group of an unlike array; empty: all have this one.
    std::vector<DayWeather> groups{};

    /// The rows of a group.
    [[nodiscard]] const DayWeather& of_group(std::size_t group) const {
        return groups.empty() ? *this : groups[group];
    }
    [[nodiscard]] std::size_t size() const { return irradiance_w_m2.size(); }
    [[nodiscard]] double hours() const { return step_h * static_cast<double>(size()); }
    /// Irradiance on the cells of a panel that converts `rear_share` of its rear light [W/m2].
    [[nodiscard]] double sun_w_m2(std::size_t row, double rear_share) const;
    [[nodiscard]] double cell_temperature_c(std::size_t row, double noct_c,
                                            double rear_share = 0.0) const;
    /// Hour of the day, 0 to 24, that long after the start.
    [[nodiscard]] double hour_of_day(double since_start_h) const;
};

/// That part of the weather. Throws InvalidInput where its rows have gaps or are not in order of
/// time, where the air is not known, and where the weather does not cover the span.
[[nodiscard]] DayWeather day_weather(const Weather& weather, const DaySpan& span = {});

}  // namespace heatmatch
