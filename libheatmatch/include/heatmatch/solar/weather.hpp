#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
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

class Sky;

/// The sky that a weather was made from; null where only the sun on one plane is known. Weathers
/// are compared by their rows, not by it.
struct KeptSky {
    std::shared_ptr<const Sky> made_from{};

    friend bool operator==(const KeptSky&, const KeptSky&) { return true; }
};

/// Sun on the cells and the inputs of their temperature, row by row and in any order: energy
/// depends on how often a condition occurs, not when. All lists have the same length.
struct Weather {
    std::vector<double> irradiance_w_m2{};  //!< on the cells
    std::vector<double> base_c{};           //!< cells without sun: the air [°C]
    /// Irradiance that warms them, reduced for wind above 1 m/s [W/m2]; 0 where base_c is the
    /// temperature of the cells themselves.
    std::vector<double> heating_irradiance_w_m2{};
    std::vector<double> hours{};          //!< duration of a row [h]
    std::vector<std::uint8_t> month{};    //!< 1 to 12 by mean solar time of the place; 0: not known
    std::vector<double> clear_w_m2{};     //!< on the cells under a cloudless sky; empty: not known
    std::vector<double> overcast_w_m2{};  //!< with the sun behind a cloud; empty: not known
    /// On the backs of the panels behind their glass, mean over their height, and the same under a
    /// cloudless sky and with the sun behind a cloud; empty: not known [W/m2].
    std::vector<double> rear_w_m2{};
    std::vector<double> rear_clear_w_m2{};
    std::vector<double> rear_overcast_w_m2{};
    /// Share of the light that the shaded substrings of a panel lose; empty: all have the same
    /// light.
    std::vector<double> shaded_share{};
    std::array<double, 12> days{};  //!< days of each month in the rows
    double step_hours = 1.0;        //!< averaging time of a row [h]
    /// Hour of the day, by mean solar time of the place, at the start of the first row [h]. It is
    /// set only if the rows follow each other without a gap and base_c is the air.
    std::optional<double> first_hour{};
    Sentences remarks{};  //!< gaps and repairs, counted
    std::vector<Assumption> assumed{};
    std::vector<Assumption> rear_assumed{};  //!< for rear light only
    KeptSky sky{};                           //!< makes the weather of other planes

    [[nodiscard]] std::size_t size() const { return irradiance_w_m2.size(); }
    /// Temperature of the cells of a panel with that NOCT in a row [°C].
    [[nodiscard]] double cell_temperature_c(std::size_t row, double noct_c) const;
    /// Irradiance that warms the cells of a panel that converts `share` of its rear light [W/m2].
    [[nodiscard]] double warming_with(std::size_t row, double share) const;
    /// Sun on the cells over all rows [kWh/m2].
    [[nodiscard]] double irradiation_kwh_m2() const;
    /// Whether cloud within the step can be bounded: steps are long and both skies are known.
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

/// The bound of cloud within the step: each row is split into a sunny and an overcast part with the
/// same mean; temperatures are those of the mean. Rows brighter than clear or darker than overcast
/// are not split. Throws InvalidInput where the two skies are not known.
[[nodiscard]] Weather split_by_cloud(const Weather& weather);

/// Coverage of a month by weather.
struct MonthCover {
    double share = 0.0;      //!< of its days
    bool has_nights = true;  //!< false where almost no row is dark: the nights were omitted
    double factor = 0.0;     //!< factor from the rows to the whole month; 0: not covered

    [[nodiscard]] bool covered() const { return factor > 0.0; }
};

/// Coverage of each month by the rows, January first. A month with less than a quarter of its days
/// is not covered; rows without nights have a factor of 1.
[[nodiscard]] std::array<MonthCover, 12> month_cover(const Weather& weather);

/// Throws InvalidInput where the lists of a weather differ in length or a month is above 12.
void check_weather(const Weather& weather);

/// Throws InvalidInput unless every month is 1 to 12, each once.
void check_months(std::span<const int> months);

}  // namespace heatmatch
