#include "heat/air_gap.hpp"
#include "within.hpp"
#include "zero_k.hpp"

#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "heatmatch/heat/air.hpp"

using heatmatch::across_gap_k;

// Source: Incropera, table 13.3: long concentric cylinders exchange
// `sigma A1 (T1^4 - T2^4)/(1/e1 + (1 - e2)/e2 r1/r2)`, both of emissivity 0.8; equation 3.32:
// `2 pi k (T1 - T2)/ln(r2/r1)` through air at rest, of the mean temperature.
TEST_CASE("heat of a sheath crosses its gap by radiation and through air") {
    for (const double outer_m : {0.0042, 0.005, 0.008, 0.02, 0.1}) {
        for (const double w_per_m : {5.0, 60.0, 300.0}) {
            constexpr double sheath_m = 0.004;
            constexpr double sand_k = 200.0 + zero_k;
            const double hot_k = across_gap_k(sheath_m, outer_m, w_per_m, sand_k);
            CAPTURE(outer_m);
            CAPTURE(w_per_m);
            CHECK(hot_k > sand_k);
            const double exchange = 1.0 / 0.8 + 0.2 / 0.8 * sheath_m / outer_m;
            const double radiated = 5.670374e-8 * 2.0 * std::numbers::pi * sheath_m *
                                    (std::pow(hot_k, 4.0) - std::pow(sand_k, 4.0)) / exchange;
            const double k_w_mk = heatmatch::air_at(0.5 * (hot_k + sand_k)).conductivity_w_mk;
            const double conducted =
                2.0 * std::numbers::pi * k_w_mk * (hot_k - sand_k) / std::log(outer_m / sheath_m);
            CHECK(within(radiated + conducted, w_per_m, 1e-6));
        }
    }
}

TEST_CASE("no gap and no heat leave the sheath as hot as the sand") {
    CHECK(across_gap_k(0.004, 0.004, 100.0, 500.0) == 500.0);
    CHECK(across_gap_k(0.004, 0.005, 0.0, 500.0) == 500.0);
}
