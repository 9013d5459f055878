#include "heatmatch/solar/clear_sky.hpp"

#include "degrees.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "heatmatch/solar/sun_position.hpp"

namespace heatmatch {

double relative_air_mass(double apparent_zenith_deg) {
    if (apparent_zenith_deg > 90.0) return std::numeric_limits<double>::infinity();
    return 1.0 / (std::cos(radians(apparent_zenith_deg)) +
                  0.50572 * std::pow(6.07995 + (90.0 - apparent_zenith_deg), -1.6364));
}

double haurwitz_ghi_w_m2(double apparent_zenith_deg) {
    const double cosine = std::cos(radians(apparent_zenith_deg));
    return cosine <= 0.0 ? 0.0 : 1098.0 * cosine * std::exp(-0.059 / cosine);
}

SkyIrradiance ineichen_clear_sky(double apparent_zenith_deg, const ClearAir& air) {
    const double cosine = std::cos(radians(apparent_zenith_deg));
    if (cosine <= 0.0) return {};
    const double mass =
        relative_air_mass(apparent_zenith_deg) * standard_pressure_pa(air.elevation_m) / 101325.0;
    const double fh1 = std::exp(-air.elevation_m / 8000.0);
    const double fh2 = std::exp(-air.elevation_m / 1250.0);
    const double cg1 = 5.09e-05 * air.elevation_m + 0.868;
    const double cg2 = 3.92e-05 * air.elevation_m + 0.0387;
    const double turbidity = air.linke_turbidity;
    const double ghi = cg1 * air.extraterrestrial_w_m2 * cosine *
                       std::exp(-cg2 * mass * (fh1 + fh2 * (turbidity - 1.0)));
    const double beam = air.extraterrestrial_w_m2 * (0.664 + 0.163 / fh1) *
                        std::exp(-0.09 * mass * (turbidity - 1.0));
    const double share = 1.0 - (0.1 - 0.2 * std::exp(-turbidity)) / (0.1 + 0.882 / fh1);
    const double dni = std::min(beam, std::max(0.0, share) * ghi / cosine);
    return {.ghi_w_m2 = ghi, .dni_w_m2 = dni, .dhi_w_m2 = ghi - dni * cosine};
}

}  // namespace heatmatch
