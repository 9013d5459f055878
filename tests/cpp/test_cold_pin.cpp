#include "bench_wires.hpp"
#include "demo.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

#include "heatmatch/heat/hot_tail.hpp"

using heatmatch::HotTail;
using heatmatch::TerminalPlace;

namespace {

/// In the middle of a cold end of 4 m in a bed of 100 °C: far from heated part and wire, so that
/// the pin's own heat alone is left.
double middle_of_cold_end_c(double sheath_mm, double wire_a, std::optional<double> pin_a) {
    const HotTail tail{.sheath_c = 300.0,
                       .bed_c = 100.0,
                       .bed_conductivity_w_mk = 0.20,
                       .sheath_diameter_mm = sheath_mm,
                       .cold_length_m = 4.0,
                       .place = TerminalPlace::buried,
                       .current_a = wire_a,
                       .pin_a = pin_a};
    const auto found = tail_temperatures(
        tail, silicone(), &heatmatch::find_insulation(starter(), silicone().insulation));
    REQUIRE(found.chain);
    return found.chain->temperature_c(1, 2.0);
}

}  // namespace

// Source: by hand: a pin of 0.2875 * 8 = 2.3 mm, 4.155 mm2, has 0.3/4.155 = 0.0722 ohm a metre; at
// 10 A that is 7.220 W/m, which 0.1 m of sand of 0.2 W/mK takes at 2 pi 0.2/ln(0.1/0.004) =
// 0.3904 W/mK: 18.49 K. Of 16 mm: 1.805 W/m over 0.4975 W/mK: 3.628 K.
TEST_CASE("the pin of a cold end is hotter than the bed by its own Joule heat") {
    CHECK(within(middle_of_cold_end_c(8.0, 10.0, {}) - 100.0, 18.49, 1e-3));
    CHECK(within(middle_of_cold_end_c(16.0, 10.0, {}) - 100.0, 3.628, 1e-3));
    CHECK(within(middle_of_cold_end_c(8.0, 5.0, {}) - 100.0, 18.49 / 4.0, 1e-3));
    // The element's own current where the wire carries that of several.
    CHECK(within(middle_of_cold_end_c(8.0, 30.0, 10.0) - 100.0, 18.49, 1e-3));
    CHECK(within_abs(middle_of_cold_end_c(8.0, 30.0, 0.0), 100.0, 1e-6));
}
