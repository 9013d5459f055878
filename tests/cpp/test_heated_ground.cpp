#include "exact_conduction.hpp"
#include "heated_ground.hpp"

#include <cmath>
#include <limits>

#include <doctest/doctest.h>

using heatmatch::BedCharge;

// Source: Carslaw & Jaeger, section 10.4, added up along the line; wells of one to six months.
TEST_CASE("a heated well in ground without end is a line of finite length") {
    constexpr double soil_c = 590.0;
    constexpr double length_m = 10.0;
    for (const double k : {0.5, 1.0, 2.0}) {
        for (const double radius_m : {0.0375, 0.075}) {
            for (const double j_m3k : {1.5e6, 3.35e6}) {
                double before_w = std::numeric_limits<double>::infinity();
                for (const double days : {30.0, 90.0, 180.0}) {
                    CAPTURE(k);
                    CAPTURE(radius_m);
                    CAPTURE(days);
                    const BedCharge charge = ground(k, j_m3k, length_m, radius_m, days);
                    const double power_w = heatmatch::largest_power_w(charge, soil_c, 1.0);
                    const double exact_k =
                        finite_line_rise_k(power_w / length_m, k, k / j_m3k, length_m, radius_m,
                                           days * day_h * 3600.0);
                    CHECK(std::fabs(exact_k / (soil_c - ground_c) - 1.0) < 0.03);
                    CHECK(power_w < before_w);  // the ground absorbs less and less
                    before_w = power_w;
                }
            }
        }
    }
}

// Source: the same line, 0.3 and 0.9 m beside it.
TEST_CASE("the ground beside a short heated length warms as beside a line of finite length") {
    constexpr double power_w = 75.6;
    for (const double length_m : {0.3, 0.8, 1.5}) {
        for (const double k : {0.8, 1.2, 1.6}) {
            for (const double j_m3k : {1.5e6, 2.5e6}) {
                for (const double days : {120.0, 243.0}) {
                    const BedCharge charge = ground(k, j_m3k, length_m, 0.025, days);
                    for (const double from_m : {0.3, 0.9}) {
                        CAPTURE(length_m);
                        CAPTURE(from_m);
                        const double found_k =
                            heatmatch::bed_temperature_c(charge, power_w, from_m) - ground_c;
                        const double exact_k =
                            finite_line_rise_k(power_w / length_m, k, k / j_m3k, length_m, from_m,
                                               days * day_h * 3600.0);
                        CHECK(std::fabs(found_k / exact_k - 1.0) < 0.12);
                    }
                }
            }
        }
    }
}
