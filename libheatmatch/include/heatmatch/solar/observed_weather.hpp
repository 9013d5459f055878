#pragma once

#include <span>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/cell_temperature.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Measured or modeled sun and air in equal steps of 1 minute to 1 hour. All lists have one length;
/// an empty list is not known. Required are the times, the air, and the sun as `ghi_w_m2` or as
/// `dni_w_m2` and `dhi_w_m2`.
struct Observations {
    std::span<const double> unix_time_s{};  //!< since 1970-01-01 00:00 UTC, rising [s]
    std::span<const double> ghi_w_m2{};     //!< global horizontal [W/m2]
    std::span<const double> dni_w_m2{};     //!< direct normal [W/m2]
    std::span<const double> dhi_w_m2{};     //!< diffuse horizontal [W/m2]
    std::span<const double> air_c{};        //!< [°C]
    std::span<const double> wind_m_s{};     //!< [m/s]
    double wind_height_m = mast_height_m;   //!< height of the wind measurement; panel_height_m: at
                                            //!< the panels
    double label = 0.0;                     //!< the time is the start of the step; 0.5 its middle,
                                            //!< 1 its end
};

/// Weather on the site's plane. The sun's position is that in the middle of each step. Missing
/// components of the sun follow from the other two, or by the split of Erbs from the global; the
/// sky is that of Hay and Davies, the ground has the albedo of the month; losses at the glass, dirt
/// and snow are those of the site. Wind is converted to the height of the panels, which is listed
/// as assumed; unknown wind is the 1 m/s of NOCT. Small negative readings count as 0; gaps, repairs
/// and readings inconsistent with the sun are counted in `remarks`. Throws InvalidInput naming row
/// and time for impossible values, and where more than a tenth of the sunlight falls while the sun
/// is down.
[[nodiscard]] Weather weather_from_observations(const Observations& observations, const Site& site);

}  // namespace heatmatch
