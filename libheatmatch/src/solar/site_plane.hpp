#pragma once

#include <array>
#include <vector>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/rear_light.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// A site with all inputs of the irradiance on its panels; lists by month.
struct SitePlane {
    Place place{};
    std::array<Plane, 12> plane{};   //!< with the albedo of the month
    std::array<double, 12> clean{};  //!< share of the irradiance that passes the dirt
    std::array<double, 12> bare{};   //!< share of the time without snow on the panels
    std::array<double, 12> linke_turbidity{};
    RearView rear{};
    std::vector<Assumption> assumed{};
    std::vector<Assumption> rear_assumed{};  //!< for rear light only
};

/// Sets the unknown values of the site and lists them. Throws InvalidInput where latitude,
/// longitude or tilt are missing, or a value is out of its range.
[[nodiscard]] SitePlane site_plane(const Site& site);

/// A moment at a site.
struct SkyMoment {
    std::size_t month = 0;  //!< 0 to 11, by the mean solar time of the place
    SunPosition sun{};
    double extraterrestrial_w_m2 = 0.0;

    [[nodiscard]] bool is_day() const { return sun.apparent_zenith_deg < 90.0; }
    /// Cosine of the sun's zenith angle as seen, 0 below the horizon.
    [[nodiscard]] double cosine() const;
};
[[nodiscard]] SkyMoment sky_moment(const SitePlane& site, double unix_time_s);

[[nodiscard]] SkyIrradiance clear_sky_at(const SitePlane& site, const SkyMoment& moment);

/// Light on the panels' plane before the glass.
[[nodiscard]] PlaneIrradiance light_on_glass(const SitePlane& site, const SkyMoment& moment,
                                             const SkyIrradiance& sky);

/// Cooling of the panels by the air.
struct PanelAir {
    double air_c = 0.0;
    double wind_factor = 1.0;  //!< warming relative to that in 1 m/s
};

/// Appends one row: the irradiance behind the glass under this sky, under a clear one and with the
/// sun behind a cloud (only the diffuse part of this sky). Snow reduces the hours, dirt the
/// irradiance; the days are not reduced.
void append_row(Weather& weather, const SitePlane& site, const SkyMoment& moment,
                const SkyIrradiance& sky, const PanelAir& air, double hours);

}  // namespace heatmatch
