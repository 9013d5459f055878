#include "air_gap.hpp"

#include <cmath>
#include <cstdint>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/air.hpp"
#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

namespace {

constexpr double hottest_wall_k = 3500.0;

}  // namespace

double across_gap_k(double sheath_m, double outer_m, double w_per_m, double outer_k) {
    if (outer_m <= sheath_m || w_per_m <= 0.0) return outer_k;
    constexpr double emissivity = 0.8;  // of both, oxidized metal and sand; from memory
    const double effective =
        1.0 / (1.0 / emissivity + sheath_m / outer_m * (1.0 / emissivity - 1.0));
    const auto surplus = [&](double sheath_k) {
        const double k = air_at(0.5 * (sheath_k + outer_k)).conductivity_w_mk;
        const double square = sheath_k * sheath_k + outer_k * outer_k;
        return 2.0 * pi * k / std::log(outer_m / sheath_m) * (sheath_k - outer_k) +
               2.0 * pi * sheath_m * effective * stefan_boltzmann * square * (sheath_k + outer_k) *
                   (sheath_k - outer_k) -
               w_per_m;
    };
    if (surplus(hottest_wall_k) <= 0.0) return hottest_wall_k;
    std::uintmax_t steps = 100;
    return boost::math::tools::toms748_solve(surplus, outer_k, hottest_wall_k,
                                             boost::math::tools::eps_tolerance<double>(40), steps)
        .second;
}

double settled_sheath_c(const BedCharge& charge, double power_w, double sheath_c, double gap_m) {
    const double radius_m = charge.legs.sheath_radius_m;
    return across_gap_k(radius_m, radius_m + gap_m, power_w / charge.legs.heated_length_m(),
                        sheath_c + zero_celsius_k) -
           zero_celsius_k;
}

}  // namespace heatmatch
