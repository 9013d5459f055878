#include "heatmatch/solar/plane_irradiance.hpp"

#include "degrees.hpp"

#include <algorithm>
#include <cmath>

namespace heatmatch {

SkyIrradiance erbs_split(double ghi_w_m2, double zenith_deg, double extraterrestrial_w_m2) {
    if (ghi_w_m2 <= 0.0) return {};
    constexpr double lowest_cosine = 0.065;
    constexpr double lowest_sun_deg = 87.0;
    const double cosine = std::cos(radians(zenith_deg));
    const double kt =
        std::clamp(ghi_w_m2 / (extraterrestrial_w_m2 * std::max(cosine, lowest_cosine)), 0.0, 1.0);
    double diffuse = 1.0 - 0.09 * kt;
    if (kt > 0.8) {
        diffuse = 0.165;
    } else if (kt > 0.22) {
        diffuse = 0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + kt * 12.336)));
    }
    if (zenith_deg > lowest_sun_deg) return {.ghi_w_m2 = ghi_w_m2, .dhi_w_m2 = ghi_w_m2};
    return {.ghi_w_m2 = ghi_w_m2,
            .dni_w_m2 = ghi_w_m2 * (1.0 - diffuse) / cosine,
            .dhi_w_m2 = ghi_w_m2 * diffuse};
}

double incidence_angle_deg(const Plane& plane, const SunPosition& sun) {
    const double tilt = radians(plane.tilt_deg);
    const double zenith = radians(sun.apparent_zenith_deg);
    const double between = radians(sun.azimuth_deg - plane.azimuth_deg);
    const double cosine =
        std::cos(tilt) * std::cos(zenith) + std::sin(tilt) * std::sin(zenith) * std::cos(between);
    return degrees(std::acos(std::clamp(cosine, -1.0, 1.0)));
}

PlaneIrradiance plane_irradiance(const Plane& plane, const SunPosition& sun,
                                 const SkyIrradiance& sky, double extraterrestrial_w_m2,
                                 SkyModel model) {
    constexpr double lowest_cosine = 0.01745;  // avoids division by 0 with the sun on the horizon
    const double upright = std::cos(radians(sun.apparent_zenith_deg));
    const bool up = !(upright <= 0.0);
    const double cosine = std::max(upright, lowest_cosine);
    const double seen =
        up ? std::max(std::cos(radians(incidence_angle_deg(plane, sun))), 0.0) : 0.0;
    const double around_sun = model == SkyModel::hay_davies && up && extraterrestrial_w_m2 > 0.0
                                  ? std::clamp(sky.dni_w_m2 / extraterrestrial_w_m2, 0.0, 1.0)
                                  : 0.0;
    const double tilt_cosine = std::cos(radians(plane.tilt_deg));
    return {.beam_w_m2 = sky.dni_w_m2 * seen,
            .circumsolar_w_m2 = sky.dhi_w_m2 * around_sun * seen / cosine,
            .sky_w_m2 = sky.dhi_w_m2 * (1.0 - around_sun) * 0.5 * (1.0 + tilt_cosine),
            .ground_w_m2 = sky.ghi_w_m2 * plane.albedo * 0.5 * (1.0 - tilt_cosine)};
}

double glass_transmission(double incidence_deg) {
    if (incidence_deg >= 90.0) return 0.0;
    constexpr double index = 1.526;
    constexpr double absorbed_per_m = 4.0;
    constexpr double thickness_m = 0.002;
    constexpr double normal_reflection =
        (index - 1.0) * (index - 1.0) / ((index + 1.0) * (index + 1.0));
    const double normal = std::exp(-absorbed_per_m * thickness_m) * (1.0 - normal_reflection);
    const double angle = radians(std::fabs(incidence_deg));
    if (angle < 1e-6) return 1.0;
    const double bent = std::asin(std::sin(angle) / index);
    const double sines = std::sin(bent - angle) / std::sin(bent + angle);
    const double tangents = std::tan(bent - angle) / std::tan(bent + angle);
    const double passed = std::exp(-absorbed_per_m * thickness_m / std::cos(bent)) *
                          (1.0 - 0.5 * (sines * sines + tangents * tangents));
    return passed / normal;
}

PlaneIrradiance behind_glass(const PlaneIrradiance& on_glass, const Plane& plane,
                             double incidence_deg) {
    const double tilt = plane.tilt_deg;
    const double sky_angle = 59.7 + tilt * (-0.1388 + 0.001497 * tilt);
    const double ground_angle = 90.0 + tilt * (-0.5788 + 0.002693 * tilt);
    const double direct = glass_transmission(incidence_deg);
    return {.beam_w_m2 = on_glass.beam_w_m2 * direct,
            .circumsolar_w_m2 = on_glass.circumsolar_w_m2 * direct,
            .sky_w_m2 = on_glass.sky_w_m2 * glass_transmission(sky_angle),
            .ground_w_m2 = on_glass.ground_w_m2 * glass_transmission(ground_angle)};
}

}  // namespace heatmatch
