#pragma once

#include <cstddef>
#include <vector>

#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Weather condensed into a few moments that represent many rows each, with the moments of the
/// year's extremes.
struct WeatherNodes {
    std::vector<double> irradiance_w_m2{};
    std::vector<double> base_c{};
    std::vector<double> heating_irradiance_w_m2{};
    std::vector<double> hours{};  //!< 0 for rows included for the extremes only
    /// The same on the shaded substrings of a panel; empty: as on the others.
    std::vector<double> shaded_w_m2{};
    std::vector<double> shaded_heating_w_m2{};

    [[nodiscard]] std::size_t size() const { return hours.size(); }
    /// Sunlit hours represented by the nodes.
    [[nodiscard]] double sunlit_hours() const;
};

/// Options for condensing weather.
struct NodeOptions {
    std::vector<int> months{};   //!< only these; empty: all rows
    bool calendar_year = false;  //!< weight each month by month_cover()
    bool exact = false;          //!< one node for each sunlit row
    int irradiance_bins = 14;
    int temperature_bins = 10;
};

/// Bins of irradiance and cell temperature, with irradiance edges at the squares of equal steps.
/// Each bin has two nodes, one standard deviation on each side of its mean along the regression of
/// temperature on irradiance: this preserves hours, mean and variance of the irradiance in every
/// bin. Rows without sun are omitted. Throws InvalidInput where the weather has no sunlit row in
/// the months.
[[nodiscard]] WeatherNodes weather_nodes(const Weather& weather, const NodeOptions& options = {});

}  // namespace heatmatch
