#include "heat_beds.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/heat/heated_legs.hpp"

using heatmatch::HeatedLegs;
using heatmatch::joint_wall_concentration;
using heatmatch::LegLayout;

namespace {

HeatedLegs leg_at(double x_m, double power_w, double length_m = 0.4) {
    return {.legs = {.legs = {{.x_m = x_m}},
                     .leg_length_m = length_m,
                     .radius_m = 0.004,
                     .sheath_radius_m = 0.004},
            .power_w = power_w};
}

}  // namespace

// Source: a line source in a cylinder: at the spot beside a leg at b the flux over the mean is
// (R + b)/(R - b) (Carslaw & Jaeger); weights by power, legs on one diameter.
TEST_CASE("the wall beside two legs of unlike power is between each alone") {
    const heatmatch::StoreShell shell = bare_cylinder(0.4, 0.8);
    const std::vector<HeatedLegs> left{leg_at(-0.1, 100.0)};
    const std::vector<HeatedLegs> both{leg_at(-0.1, 100.0), leg_at(0.1, 50.0)};
    const std::vector<HeatedLegs> second_off{leg_at(-0.1, 100.0), leg_at(0.1, 0.0)};
    const double ends = joint_wall_concentration({{leg_at(0.0, 1.0)}}, shell);
    CHECK(joint_wall_concentration(left, shell) ==
          doctest::Approx(ends * (0.2 + 0.1) / (0.2 - 0.1)).epsilon(1e-12));
    CHECK(joint_wall_concentration(both, shell) ==
          doctest::Approx(ends * (2.0 / 3.0 * 3.0 + 1.0 / 3.0 / 3.0)).epsilon(1e-12));
    CHECK(joint_wall_concentration(second_off, shell) == joint_wall_concentration(left, shell));
}

TEST_CASE("one bank alone has the concentration of its layout") {
    const heatmatch::StoreShell shell = bare_cylinder(0.5, 0.6);
    for (const int count : {1, 2, 4}) {
        const HeatedLegs bank{.legs = upright_legs(count, 0.3, 0.06), .power_w = 80.0};
        CHECK(joint_wall_concentration({&bank, 1}, shell) == bank.legs.wall_concentration(shell));
    }
    CHECK(joint_wall_concentration({}, shell) == 1.0);
}
