#pragma once

#include <cstddef>
#include <vector>

#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Weather condensed into few moments that stand for many rows each, and the moments that hold the
/// year's extremes.
struct WeatherNodes {
    std::vector<double> irradiance_w_m2{};
    std::vector<double> base_c{};
    std::vector<double> warming_w_m2{};
    std::vector<double> hours{};  //!< 0 for the rows that are here for the extremes only

    [[nodiscard]] std::size_t size() const { return hours.size(); }
    /// Sunlit hours that the nodes stand for.
    [[nodiscard]] double sunlit_hours() const;
};

/// How weather is condensed.
struct NodeOptions {
    std::vector<int> months{};   //!< only these; empty: all rows
    bool calendar_year = false;  //!< weigh each month as month_cover() has it
    bool exact = false;          //!< one node for each sunlit row
    int irradiance_bins = 14;
    int temperature_bins = 10;
};

/// Bins of sun and cell temperature, edges of the sun as the squares of equal steps, two nodes a
/// bin at one standard deviation each side of its mean along the regression of temperature on sun:
/// that keeps hours, means and variance of the sun in every bin. Rows without sun are left out.
/// Throws InvalidInput where the weather has no sunlit row in the months.
[[nodiscard]] WeatherNodes weather_nodes(const Weather& weather, const NodeOptions& options = {});

}  // namespace heatmatch
