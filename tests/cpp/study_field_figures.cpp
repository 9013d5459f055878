#include "extent.hpp"
#include "heated_ground.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"

// Published figures of heated ground beside conduction alone. What the publications leave out is
// bounded, so only the ranges can be compared: orders of magnitude, not
// validation. What can fail is in test_heated_ground.cpp.
TEST_SUITE_BEGIN("study");

// Source: epa-clu-in, US EPA, CLU-IN, conductive heating (after Baker & Heron 2004): heater wells
// in steel pipe, element 540 to 815 °C, hottest soil about 590 °C at the well; a vendor's poster of
// 2018: 250 to 1000 W/ft of heater. Excerpts seen, no well or element diameter, soil or duration in
// them.
TEST_CASE("heater wells: watts a metre that hold 590 °C at the well, by conduction alone" *
          doctest::skip()) {
    constexpr double soil_c = 590.0;
    const Extent published_w_m{800.0, 3000.0};
    const Extent published_element_c{540.0, 815.0};
    constexpr double well_length_m = 10.0;
    Extent all_w_m;
    Extent all_element_c;
    for (const double k : {0.5, 1.0, 2.0}) {
        Extent w_m;
        Extent element_c;
        for (const double diameter_m : {0.075, 0.150}) {
            // Dry ground, and with 300 kg/m3 of water that boils off on the way, 2.6 MJ/kg.
            for (const double j_m3k : {1.5e6, 2.0e6 + 300.0 * 2.6e6 / (soil_c - ground_c)}) {
                for (const double days : {30.0, 90.0, 180.0}) {
                    const heatmatch::BedCharge charge =
                        ground(k, j_m3k, well_length_m, 0.5 * diameter_m, days);
                    const double power_w = largest_power_w(charge, soil_c, 1.0);
                    const double here_w_m = power_w / well_length_m;
                    w_m.add(here_w_m);
                    for (const double element_mm : {20.0, 40.0}) {
                        heatmatch::BedCharge inside = charge;
                        inside.legs.sheath_radius_m = 0.5 * element_mm / 1000.0;
                        inside.gap_m = 0.5 * diameter_m - inside.legs.sheath_radius_m;
                        element_c.add(bed_temperatures(inside, power_w).sheath_c);
                    }
                }
            }
        }
        MESSAGE("soil of " << k << " W/mK: " << w_m.low << " to " << w_m.high
                           << " W/m hold 590 C at a well of 75 to 150 mm for one to six months; "
                              "element of 20 to 40 mm in the pipe "
                           << element_c.low << " to " << element_c.high << " C");
        all_w_m.add(w_m.low);
        all_w_m.add(w_m.high);
        all_element_c.add(element_c.low);
        all_element_c.add(element_c.high);
    }
    MESSAGE("all: " << all_w_m.low << " to " << all_w_m.high << " W/m, published "
                    << published_w_m.low << " to " << published_w_m.high << "; element "
                    << all_element_c.low << " to " << all_element_c.high << " C, published "
                    << published_element_c.low << " to " << published_element_c.high);
    // Conduction in one k ends below the published upper end: there steam carries heat away, water
    // flows in, and wells are rated for their start.
}

// Source: rossman-2006: Rossman, Hayden & Rizzo 2006, J. Environ. Eng. 132(5):537: 441 kWh in eight
// months into unsaturated silt 2.3 m deep; 7.7 to 19.4 K above ambient at 0.3 m from the heating
// well, 3.3 to 4.3 K at 0.9 m. Abstract and introduction seen: no element length, no silt
// conductivity.
TEST_CASE("441 kWh into silt in eight months, by conduction alone" * doctest::skip()) {
    const Extent published_near_k{7.7, 19.4};
    const Extent published_far_k{3.3, 4.3};
    constexpr double days = 243.0;
    constexpr double power_w = 441e3 / (days * day_h);
    constexpr double deep_m = 2.3;
    Extent near_k;
    Extent far_k;
    int cases = 0;
    int both = 0;
    for (const double length_m : {0.3, 0.8, 1.5}) {
        for (const double k : {0.8, 1.2, 1.6}) {
            Extent near_here;
            Extent far_here;
            for (const double j_m3k : {1.5e6, 2.5e6}) {
                for (const double until_days : {120.0, days}) {
                    const double s = until_days * day_h * 3600.0;
                    const double diffusivity = k / j_m3k;
                    const heatmatch::BedCharge charge =
                        ground(k, j_m3k, length_m, 0.025, until_days);
                    std::array<double, 2> rise_k{};
                    for (std::size_t i = 0; i < 2; ++i) {
                        const double from_m = i == 0 ? 0.3 : 0.9;
                        const double endless_k =
                            bed_temperature_c(charge, power_w, from_m) - ground_c;
                        // The cold surface as a sink as high above it as the element lies below.
                        const double image_m = std::hypot(from_m, 2.0 * deep_m);
                        const double sink_k = power_w / (4.0 * std::numbers::pi * k * image_m) *
                                              std::erfc(image_m / std::sqrt(4.0 * diffusivity * s));
                        rise_k[i] = endless_k - sink_k;
                    }
                    near_here.add(rise_k[0]);
                    far_here.add(rise_k[1]);
                    ++cases;
                    both += published_near_k.holds(rise_k[0]) && published_far_k.holds(rise_k[1])
                                ? 1
                                : 0;
                }
            }
            MESSAGE("element " << length_m << " m, silt " << k << " W/mK, four to eight months: "
                               << near_here.low << " to " << near_here.high << " K at 0.3 m, "
                               << far_here.low << " to " << far_here.high << " K at 0.9 m");
            for (const double each : {near_here.low, near_here.high}) near_k.add(each);
            for (const double each : {far_here.low, far_here.high}) far_k.add(each);
        }
    }
    MESSAGE("all: " << near_k.low << " to " << near_k.high << " K at 0.3 m, published "
                    << published_near_k.low << " to " << published_near_k.high << "; " << far_k.low
                    << " to " << far_k.high << " K at 0.9 m, published " << published_far_k.low
                    << " to " << published_far_k.high << "; " << both << " of " << cases
                    << " cases lie within both");
}

TEST_SUITE_END();
