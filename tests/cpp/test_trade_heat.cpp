#include "bare_pot.hpp"
#include "bed_3d.hpp"

#include <array>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_shells.hpp"

// Common practice, no source: 240 W into a bare pot of some 23 kg of dry sand in air of 11 °C, legs
// that do not glow. Shells against the solver of bed_3d.hpp.
TEST_CASE("the bed mean of a bare pot of 23 kg lies where the trade has it" *
          doctest::test_suite("numerical")) {
    CHECK(bare_cylinder(pot_diameter_m, pot_height_m).volume_m3 * 1550.0 ==
          doctest::Approx(23.0).epsilon(0.01));
    constexpr std::array<Extent, 2> trade = {mean_3_h, mean_5_h};
    for (const int legs : {2, 4}) {
        for (const double emissivity : {0.3, 0.9}) {
            CAPTURE(legs);
            CAPTURE(emissivity);
            const heatmatch::BedCharge charge =
                pot(0.27, emissivity, upright_legs(legs, 0.20, 0.05));
            Bed3d bed({.fill = charge.fill,
                       .shell = charge.shell,
                       .legs = charge.legs,
                       .air_c = pot_air_c,
                       .start_c = pot_air_c},
                      {.near_m = 0.010, .high_m = 0.013});
            heatmatch::BedShells shells(charge.fill, charge.shell, charge.legs, pot_air_c,
                                        pot_air_c);
            double before_h = 0.0;
            for (std::size_t i = 0; i < trade.size(); ++i) {
                const double hours = i == 0 ? 3.0 : 5.0;
                bed.run(pot_power_w, (hours - before_h) * 3600.0);
                shells.step(pot_power_w, (hours - before_h) * 3600.0);
                before_h = hours;
                CHECK(trade[i].holds(bed.bed_mean_c()));
                CHECK(std::fabs(shells.bed_mean_c() - bed.bed_mean_c()) <
                      0.03 * (bed.bed_mean_c() - pot_air_c));
            }
            // A probe near the wall still climbs after five hours.
            const double probe_m = 0.5 * pot_diameter_m - 0.030;
            const double at_5_h = bed.probe_c(true, probe_m);
            bed.run(pot_power_w, 900.0);
            CHECK(bed.probe_c(true, probe_m) > at_5_h + 1.0);
        }
    }
}

// Common practice, no source: ordinary wire with PVC of 90 °C melts at buried terminals.
TEST_CASE("terminals of a pot's element are cooler by a longer cold end, and outside the bed") {
    constexpr double pvc_c = 90.0;
    for (const auto end : {heatmatch::ConductivityEnd::low, heatmatch::ConductivityEnd::typical}) {
        std::array<Terminals, heated_mm.size()> all;
        for (std::size_t h = 0; h < heated_mm.size(); ++h) {
            all[h] = terminals_of(heated_mm[h], end);
            CAPTURE(heated_mm[h]);
            if (h > 0) CHECK(all[h].sheath_c < all[h - 1].sheath_c);
            for (std::size_t c = 0; c < cold_mm.size(); ++c) {
                CAPTURE(cold_mm[c]);
                CHECK(all[h].outside_c[c] < all[h].buried_c[c]);
                CHECK(all[h].buried_c[c] > pvc_c);
                if (c > 0) {
                    CHECK(all[h].buried_c[c] < all[h].buried_c[c - 1]);
                    CHECK(all[h].outside_c[c] < all[h].outside_c[c - 1]);
                }
                // Far from the heat the bed decides, a little hotter between many legs.
                const double allowed_k = cold_mm[c] <= 75.0 ? 0.0 : 2.0;
                if (h > 0) CHECK(all[h].buried_c[c] < all[h - 1].buried_c[c] + allowed_k);
            }
        }
    }
}
