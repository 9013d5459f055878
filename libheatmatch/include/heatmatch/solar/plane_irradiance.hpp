#pragma once

#include <array>
#include <span>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/solar/clear_sky.hpp"
#include "heatmatch/solar/sun_position.hpp"

namespace heatmatch {

/// The plane of the panels, and the ground before it.
struct Plane {
    double tilt_deg = 0.0;       //!< 0 flat, 90 upright [deg]
    double azimuth_deg = 180.0;  //!< direction they face, clockwise from north [deg]
    double albedo = 0.2;         //!< of the ground
};

/// Sky model for diffuse light.
enum class SkyModel {
    hay_davies,  //!< part of it circumsolar
    isotropic    //!< uniform
};
inline constexpr auto sky_model_words =
    std::to_array<std::string_view>({"hay_davies", "isotropic"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SkyModel) {
    return sky_model_words;
}

/// Irradiance on a plane by source [W/m2].
struct PlaneIrradiance {
    double beam_w_m2 = 0.0;         //!< from the sun's disc
    double circumsolar_w_m2 = 0.0;  //!< circumsolar
    double sky_w_m2 = 0.0;          //!< from the rest of the sky
    double ground_w_m2 = 0.0;       //!< reflected

    [[nodiscard]] double total_w_m2() const {
        return beam_w_m2 + circumsolar_w_m2 + sky_w_m2 + ground_w_m2;
    }
};

/// Splits global into direct and diffuse by the hourly clearness index kt, with the true zenith:
/// diffuse share 1 - 0.09 kt up to 0.22, a polynomial up to 0.8, 0.165 above. Where the sun is
/// lower than 3 degrees all of it counts as diffuse; a negative global counts as 0. @cite erbs-1982
[[nodiscard]] SkyIrradiance erbs_split(double ghi_w_m2, double zenith_deg,
                                       double extraterrestrial_w_m2);

/// Angle between the sun and the normal of the plane [deg].
[[nodiscard]] double incidence_angle_deg(const Plane& plane, const SunPosition& sun);

/// Irradiance on the plane before reflection at its glass. The sky is that of Hay and Davies or
/// isotropic; the ground reflects isotropically. A sun below the horizon gives no direct light,
/// whatever the sky values are. @cite hay-davies-1980 @cite liu-jordan-1963
[[nodiscard]] PlaneIrradiance plane_irradiance(const Plane& plane, const SunPosition& sun,
                                               const SkyIrradiance& sky,
                                               double extraterrestrial_w_m2,
                                               SkyModel model = SkyModel::hay_davies);

/// Transmission of the glass at an angle over that at normal incidence: Snell, Fresnel and 2 mm of
/// glass of index 1.526. 0 from 90 degrees on. @cite de-soto-2006
[[nodiscard]] double glass_transmission(double incidence_deg);

/// Irradiance after reflection at the glass; diffuse light has the effective angles of Brandemuehl
/// and Beckman, fitted for tilts of 0 to 90 degrees. @cite brandemuehl-beckman-1980
[[nodiscard]] PlaneIrradiance behind_glass(const PlaneIrradiance& on_glass, const Plane& plane,
                                           double incidence_deg);

}  // namespace heatmatch
