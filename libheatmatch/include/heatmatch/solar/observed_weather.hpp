#pragma once

#include <span>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/cell_temperature.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Measured or modelled sun and air in equal steps of 1 minute to 1 hour; lists of one length, an
/// empty one is not known. Known must be the times, the air, and the sun by `ghi_w_m2` or by
/// `dni_w_m2` and `dhi_w_m2`.
struct Observations {
    std::span<const double> unix_time_s{};  //!< since 1970-01-01 00:00 UTC, rising [s]
    std::span<const double> ghi_w_m2{};     //!< global horizontal [W/m2]
    std::span<const double> dni_w_m2{};     //!< direct normal [W/m2]
    std::span<const double> dhi_w_m2{};     //!< diffuse horizontal [W/m2]
    std::span<const double> air_c{};        //!< [°C]
    std::span<const double> wind_m_s{};     //!< [m/s]
    double wind_height_m = mast_height_m;   //!< at which that was measured; panel_height_m: at them
    double label = 0.0;                     //!< the time is the start of the step; 0.5 its middle,
                                            //!< 1 its end
};

/// Weather on the site's plane: the sun stands where it stands in the middle of each step; what is
/// missing of the sun's parts follows from the other two, or by the split of Erbs from the global;
/// sky of Hay and Davies, ground with the albedo of the month, losses at the glass, dirt and snow
/// of the site. Wind is brought down to the panels; that is listed as assumed, and wind
/// that is not known is the 1 m/s of NOCT. Small negative readings count as 0;
/// gaps, repairs and readings that do not fit the sun are counted in `remarks`. Throws InvalidInput
/// naming row and time for what cannot be, and for more than a tenth of the sunlight while the sun
/// is down.
[[nodiscard]] Weather weather_from_observations(const Observations& observations, const Site& site);

}  // namespace heatmatch
