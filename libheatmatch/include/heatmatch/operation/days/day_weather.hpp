#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Which part of a weather to live through.
struct DaySpan {
    int month = 0;             //!< begin with its first row; 0: with the first of all
    int days = 0;              //!< that many; 0: to the end of the weather, or of the month
    double air_shift_k = 0.0;  //!< air that much warmer than the weather's, colder below 0 [K]
};

/// Sun and air in the order of time, in equal steps.
struct DayWeather {
    std::vector<double> irradiance_w_m2{};  //!< on the cells [W/m2]
    std::vector<double> warming_w_m2{};     //!< sun that warms the cells [W/m2]
    std::vector<double> rear_w_m2{};        //!< on the backs of the panels; empty: not known [W/m2]
    std::vector<double> air_c{};            //!< outside [°C]
    std::vector<double> bare_share{};       //!< of the time: panels without snow
    std::vector<std::uint8_t> month{};      //!< 1 to 12; 0: not known
    double step_h = 1.0;
    double first_hour = 0.0;  //!< of the day by the sun's mean time, at the first row [h]
    Sentences remarks{};
    std::vector<Assumption> assumed{};
    std::vector<Assumption> rear_assumed{};  //!< for the light on the backs alone

    [[nodiscard]] std::size_t size() const { return irradiance_w_m2.size(); }
    [[nodiscard]] double hours() const { return step_h * static_cast<double>(size()); }
    /// Sun on the cells of a panel that takes `rear_share` of the light on its back [W/m2].
    [[nodiscard]] double sun_w_m2(std::size_t row, double rear_share) const;
    [[nodiscard]] double cell_temperature_c(std::size_t row, double noct_c,
                                            double rear_share = 0.0) const;
    /// Hour of the day, 0 to 24, that long after the beginning.
    [[nodiscard]] double hour_of_day(double since_start_h) const;
};

/// That span of a weather. Throws InvalidInput where its rows have gaps or are in no order of time,
/// where the air is not known, and where the span is not in it.
[[nodiscard]] DayWeather day_weather(const Weather& weather, const DaySpan& span = {});

}  // namespace heatmatch
