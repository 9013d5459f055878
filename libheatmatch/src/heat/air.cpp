#include "heatmatch/heat/air.hpp"

#include <cmath>

namespace heatmatch {

namespace {

constexpr double prandtl_of_air = 0.70;

}  // namespace

Air air_at(double temperature_k) {
    constexpr double pressure_pa = 101325.0;
    constexpr double gas_constant = 287.05;
    constexpr double ln_10 = 2.302585092994046;
    const double t15 = temperature_k * std::sqrt(temperature_k);
    const double viscosity = 1.458e-6 * t15 / (temperature_k + 110.4);
    const double density = pressure_pa / (gas_constant * temperature_k);
    const double conductivity =
        2.64638e-3 * t15 / (temperature_k + 245.4 * std::exp(-12.0 * ln_10 / temperature_k));
    return {.conductivity_w_mk = conductivity,
            .kinematic_viscosity_m2_s = viscosity / density,
            .prandtl = prandtl_of_air};
}

double free_convection_cylinder(double diameter_m, double surface_k, double air_k) {
    constexpr double gravity = 9.80665;
    const double film_k = 0.5 * (surface_k + air_k);
    const Air air = air_at(film_k);
    const double grashof = gravity / film_k * std::fabs(surface_k - air_k) * diameter_m *
                           diameter_m * diameter_m /
                           (air.kinematic_viscosity_m2_s * air.kinematic_viscosity_m2_s);
    const double rayleigh = grashof * air.prandtl;
    static const double shape =
        std::pow(1.0 + std::pow(0.559 / prandtl_of_air, 9.0 / 16.0), 8.0 / 27.0);
    const double root = 0.60 + 0.387 * std::cbrt(std::sqrt(rayleigh)) / shape;
    return root * root * air.conductivity_w_mk / diameter_m;
}

double cross_flow_nusselt(double reynolds, double prandtl) {
    const double shape = std::sqrt(std::sqrt(1.0 + std::pow(0.4 / prandtl, 2.0 / 3.0)));
    const double wake = std::pow(1.0 + std::pow(reynolds / 282000.0, 0.625), 0.8);
    return 0.3 + 0.62 * std::sqrt(reynolds) * std::cbrt(prandtl) / shape * wake;
}

double convection_cylinder(double diameter_m, double surface_k, double air_k, double wind_m_s) {
    const double free = free_convection_cylinder(diameter_m, surface_k, air_k);
    if (wind_m_s <= 0.0) return free;
    const Air air = air_at(0.5 * (surface_k + air_k));
    const double reynolds = wind_m_s * diameter_m / air.kinematic_viscosity_m2_s;
    const double wind =
        cross_flow_nusselt(reynolds, air.prandtl) * air.conductivity_w_mk / diameter_m;
    return std::cbrt(free * free * free + wind * wind * wind);
}

}  // namespace heatmatch
