#pragma once

#include <array>
#include <vector>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/rear_light.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// A site with nothing left unknown that the light on its panels depends on; lists by month.
struct SitePlane {
    Place place{};
    std::array<Plane, 12> plane{};   //!< with the albedo of the month
    std::array<double, 12> clean{};  //!< share of the light that dirt leaves
    std::array<double, 12> bare{};   //!< share of the time without snow on the panels
    std::array<double, 12> linke_turbidity{};
    RearView rear{};
    std::vector<Assumption> assumed{};
    std::vector<Assumption> rear_assumed{};  //!< for the light on the backs alone
};

/// Fills what the site leaves open and lists it. Throws InvalidInput where latitude, longitude or
/// tilt are missing, or a value is out of its range.
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

/// What the air does to the panels.
struct PanelAir {
    double air_c = 0.0;
    double wind_factor = 1.0;  //!< of warming, over that in 1 m/s
};

/// Appends one row: the light behind the glass under this sky, under a clear one and with the sun
/// behind a cloud (only the diffuse light of this sky left). Snow takes from the hours, dirt from
/// the light; the days stay whole.
void append_row(Weather& weather, const SitePlane& site, const SkyMoment& moment,
                const SkyIrradiance& sky, const PanelAir& air, double hours);

}  // namespace heatmatch
