#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/class_defaults.hpp"

namespace heatmatch {

inline constexpr double brightest_plane_w_m2 = 1600.0;  //!< above it a row is an error [W/m2]

/// Days of each month in a common year, January first.
inline constexpr std::array<double, 12> days_of_month{31, 28, 31, 30, 31, 30,
                                                      31, 31, 30, 31, 30, 31};

/// Sun on the cells and what sets their temperature, row by row and in no order: energy needs to
/// know how often something was so, not when. All lists have the same length.
struct Weather {
    std::vector<double> irradiance_w_m2{};  //!< that reaches the cells [W/m2]
    std::vector<double> base_c{};           //!< cells without sun: the air [°C]
    /// Sun that warms them, less what more wind than 1 m/s takes away [W/m2]; 0 where base_c is the
    /// temperature of the cells themselves.
    std::vector<double> warming_w_m2{};
    std::vector<double> hours{};          //!< that a row stands for [h]
    std::vector<std::uint8_t> month{};    //!< 1 to 12 by the sun's time of the place; 0: not known
    std::vector<double> clear_w_m2{};     //!< on the cells under a cloudless sky; empty: not known
    std::vector<double> overcast_w_m2{};  //!< with the sun behind a cloud; empty: not known
    /// On the backs of the panels behind their glass, the mean over their height, and the same
    /// under a cloudless sky and with the sun behind a cloud; empty: not known [W/m2].
    std::vector<double> rear_w_m2{};
    std::vector<double> rear_clear_w_m2{};
    std::vector<double> rear_overcast_w_m2{};
    std::array<double, 12> days{};  //!< that the rows cover of each month
    double step_hours = 1.0;        //!< over which the rows are means [h]
    /// Of the day, by the sun's mean time of the place, where the first row begins [h]: the rows
    /// follow each other without a gap, and base_c is the air. Nothing where that is not so.
    std::optional<double> first_hour{};
    Sentences remarks{};  //!< gaps and repairs, counted
    std::vector<Assumption> assumed{};
    std::vector<Assumption> rear_assumed{};  //!< for the light on the backs alone

    [[nodiscard]] std::size_t size() const { return irradiance_w_m2.size(); }
    /// Temperature of the cells of a panel with that NOCT in a row [°C].
    [[nodiscard]] double cell_temperature_c(std::size_t row, double noct_c) const;
    /// Sun that warms the cells of a panel that takes `share` of the light on its back [W/m2].
    [[nodiscard]] double warming_with(std::size_t row, double share) const;
    /// Sun on the cells over all rows [kWh/m2].
    [[nodiscard]] double irradiation_kwh_m2() const;
    /// Whether cloud within the step can be bounded: long steps with both skies known.
    [[nodiscard]] bool has_cloud_band() const;

    friend bool operator==(const Weather&, const Weather&) = default;
};

/// Weather from the sun on the cells and their temperature, `hours_per_row` each. A year of rows is
/// taken to begin on January 1st unless `month` is given; other lengths have no months. Negative
/// irradiance down to -10 W/m2 (an instrument at night) counts as 0 and is reported. Throws
/// InvalidInput naming the row: unequal lengths, not finite, irradiance outside -10 to 1600 W/m2,
/// temperature outside -70 to 120 °C, no row with sun.
[[nodiscard]] Weather weather_from_plane(std::span<const double> irradiance_w_m2,
                                         std::span<const double> cell_temperature_c,
                                         double hours_per_row,
                                         std::span<const std::uint8_t> month = {});

/// The bound of cloud within the step: each row is split into a sunny and an overcast part of the
/// same mean, each as long as that takes; temperatures stay those of the mean. Rows that are
/// brighter than clear or darker than overcast stay whole. Throws InvalidInput where the two skies
/// are not known.
[[nodiscard]] Weather split_by_cloud(const Weather& weather);

/// How much of a month weather tells.
struct MonthCover {
    double share = 0.0;      //!< of its days
    bool has_nights = true;  //!< false where hardly any row is dark: the nights were left out
    double factor = 0.0;     //!< that makes the rows stand for the whole month; 0: not covered

    [[nodiscard]] bool covered() const { return factor > 0.0; }
};

/// What of each month the rows tell, January first. Below a quarter of its days a month is not
/// covered; rows without nights stand for themselves.
[[nodiscard]] std::array<MonthCover, 12> month_cover(const Weather& weather);

/// Throws InvalidInput where the lists of a weather differ in length or a month is above 12.
void check_weather(const Weather& weather);

/// Throws InvalidInput unless every month is 1 to 12, each once.
void check_months(std::span<const int> months);

}  // namespace heatmatch
