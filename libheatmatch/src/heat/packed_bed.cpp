#include "heatmatch/heat/packed_bed.hpp"

#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/heat/air.hpp"

namespace heatmatch {

namespace {

/// Ratio of the gas conductivity in gaps as wide as a grain to that of free gas, by the mean free
/// path and the accommodation of air on a solid.
double rarefied_share(double gas_w_mk, double grain_m, double temperature_k) {
    constexpr double pressure_pa = 101325.0;
    constexpr double gas_constant = 287.05;
    constexpr double heat_capacity = 1007.0;
    constexpr double air_constant = 2.8;
    const double accommodation =
        1.0 / (1.0 + std::pow(10.0, 0.6 - (1000.0 / temperature_k + 1.0) / air_constant));
    const double path_m = 2.0 * (2.0 - accommodation) / accommodation *
                          std::sqrt(2.0 * pi * gas_constant * temperature_k) * gas_w_mk /
                          (pressure_pa * (2.0 * heat_capacity - gas_constant));
    return 1.0 / (1.0 + path_m / grain_m);
}

}  // namespace

double packed_bed_conductivity(const PackedBed& bed, double temperature_k) {
    const double gas = air_at(temperature_k).conductivity_w_mk;
    const double grain_m = bed.grain_mm / 1000.0;
    const double psi = bed.porosity;
    // All relative to the gas: p of the grain, r of radiation, g of the gas in the gaps.
    const double kp = bed.solid_w_mk / gas;
    const double kr = 4.0 * stefan_boltzmann / (2.0 / bed.emissivity - 1.0) * temperature_k *
                      temperature_k * temperature_k * grain_m / gas;
    const double kg = rarefied_share(gas, grain_m, temperature_k);
    const double b = bed.shape * std::pow((1.0 - psi) / psi, 10.0 / 9.0);
    const double n = (1.0 + (kr - b * kg) / kp) / kg - b * (1.0 / kg - 1.0) * (1.0 + kr / kp);
    const double logarithm = std::log((kp + kr) / (b * (kg + (1.0 - kg) * (kp + kr))));
    const double core = 2.0 / n *
                        (b * (kp + kr - 1.0) / (n * n * kg * kp) * logarithm +
                         (b + 1.0) / (2.0 * b) * (kr / kg - b * (1.0 + (1.0 - kg) * kr / kg)) -
                         (b - 1.0) / (n * kg));
    const double s = std::sqrt(1.0 - psi);
    return gas * ((1.0 - s) * psi * (1.0 / (psi - 1.0 + 1.0 / kg) + kr) +
                  s * (bed.contact * kp + (1.0 - bed.contact) * core));
}

}  // namespace heatmatch
