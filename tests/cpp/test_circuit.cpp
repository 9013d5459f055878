#include "demo.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

using heatmatch::Circuit;
using heatmatch::deliver;
using heatmatch::Delivered;
using heatmatch::RunParts;
using heatmatch::Wire;

namespace {

Circuit usual_circuit(heatmatch::Hookup panels = {2, 1}, heatmatch::Hookup bank = {1, 1}) {
    return bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", bank);
}

/// A run of that many ohms there and back.
RunParts run_of_ohm(std::string_view word, double ohm) {
    const auto carries = heatmatch::find_choice<heatmatch::Carried>(word).value();
    return {
        .run = {.name = std::string(word), .carries = carries, .length_m = 1.0, .joint_ohm = ohm}};
}

/// Power into the bank for one current factor and one value of its ohms.
double power_at(const Circuit& circuit, double current_factor, double bank_ohm, double sun,
                double cell_c) {
    const double share = current_factor / circuit.panel.current_factor;
    const auto curve = heatmatch::Array{.panel = circuit.panel.today.scaled(share, 1.0),
                                        .series = circuit.panels.series,
                                        .parallel = circuit.panels.parallel}
                           .at(sun, cell_c);
    const double current = curve.into_resistance(bank_ohm + circuit.wire_ohm()).current_a;
    return current * current * bank_ohm;
}

}  // namespace

// Source: NEC Chapter 9 Table 8, direct-current resistance at 75 °C in ohm per 1000 ft, as
// reproduced on the web. Tolerance 0.5 % for solid wire, 1 % for strands, whose lay differs.
TEST_CASE("a thousand feet of copper have the resistance of the code's table") {
    struct Case {
        double awg;
        int strands;
        double ohm_per_kft;
        double tolerance;
    };
    for (const auto& [awg, strands, ohm_per_kft, tolerance] :
         {Case{14, 1, 3.07, 0.005}, Case{12, 1, 1.93, 0.005}, Case{10, 1, 1.21, 0.005},
          Case{8, 1, 0.764, 0.005}, Case{14, 7, 3.14, 0.01}, Case{12, 7, 1.98, 0.01},
          Case{10, 7, 1.24, 0.01}, Case{8, 7, 0.778, 0.01}}) {
        const auto shown_awg = awg;  // clang 14 captures no structured binding
        CAPTURE(shown_awg);
        RunParts parts;
        parts.run = {.name = "long", .length_m = 304.8};
        parts.conductor_c = 75.0;
        parts.wire = Wire{.conductor = heatmatch::ConductorMetal::copper,
                          .plating = heatmatch::Plating::bare,
                          .area_mm2 = heatmatch::awg_area_mm2(awg),
                          .strands = strands};
        CHECK(parts.loop_ohm() == doctest::Approx(2.0 * ohm_per_kft).epsilon(tolerance));
    }
}

TEST_CASE("a run's resistance is there and back, with its joints, at its temperature") {
    RunParts parts = bench_run("thhn-12-awg", 50.0);
    const double at_50 = parts.loop_ohm();
    CHECK(at_50 ==
          doctest::Approx(2.0 * heatmatch::resistance_ohm_per_m(*parts.wire, 50.0)).epsilon(1e-12));
    parts.run.surroundings.air_c.reset();
    CHECK(parts.loop_ohm() == at_50);
    parts.run.joint_ohm = 0.02;
    CHECK(parts.loop_ohm() == doctest::Approx(at_50 + 0.02).epsilon(1e-12));
    parts.run.length_m = 10.0;
    CHECK(parts.loop_ohm() == doctest::Approx(10.0 * at_50 + 0.02).epsilon(1e-12));
    parts.wire.reset();
    CHECK(parts.loop_ohm() == 0.02);
}

// Source: equal strings and equal branches lie in parallel: p of them have one p-th of the ohms.
TEST_CASE("strings and branches divide the resistance of their runs, array and bank runs do not") {
    Circuit circuit = usual_circuit({2, 2}, {1, 3});
    struct Case {
        const char* carries;
        double share;
    };
    for (const auto& [carries, share] :
         {Case{"string", 0.5}, Case{"array", 1.0}, Case{"bank", 1.0}, Case{"branch", 1.0 / 3.0}}) {
        const std::string carried(carries);  // clang 14 captures no structured binding
        CAPTURE(carried);
        circuit.runs = {run_of_ohm(carries, 0.6)};
        CHECK(circuit.current_share(circuit.runs.front().run) == doctest::Approx(share));
        CHECK(circuit.wire_ohm() == doctest::Approx(0.6 * share).epsilon(1e-12));
        // Kirchhoff: the heat in all equal runs together is what the array sees in its ohms.
        const Delivered at = deliver(circuit, 800.0, 35.0);
        const double in_one = at.current_a * share * at.current_a * share * 0.6;
        CHECK(at.wire_w == doctest::Approx(in_one / share).epsilon(1e-12));
    }
    circuit.runs = {run_of_ohm("string", 0.6), run_of_ohm("array", 0.1), run_of_ohm("bank", 0.2),
                    run_of_ohm("branch", 0.9)};
    CHECK(circuit.wire_ohm() == doctest::Approx(0.3 + 0.1 + 0.2 + 0.3).epsilon(1e-12));
}

// Source: conservation of energy.
TEST_CASE("the power of the array is that of bank and wire") {
    for (const heatmatch::Hookup panels : heatmatch::hookups_up_to(4)) {
        for (const heatmatch::Hookup bank : heatmatch::hookups_up_to(3)) {
            Circuit circuit = usual_circuit(panels, bank);
            circuit.runs = {run_of_ohm("array", 0.8), run_of_ohm("branch", 0.3)};
            CAPTURE(circuit.title());
            for (const double sun : {60.0, 350.0, 1000.0}) {
                const Delivered at = deliver(circuit, sun, 30.0);
                const auto curve =
                    heatmatch::Array::uniform(circuit.panel.today, panels.series, panels.parallel)
                        .at(sun, 30.0);
                const double array_v = curve.voltage_v(at.current_a);
                CHECK(at.power_w + at.wire_w ==
                      doctest::Approx(array_v * at.current_a).epsilon(1e-9));
                CHECK(at.power_w == doctest::Approx(at.voltage_v * at.current_a).epsilon(1e-12));
                CHECK(at.voltage_v ==
                      doctest::Approx(at.current_a * circuit.bank.typical_ohm()).epsilon(1e-12));
                CHECK(at.maximum_power_w == doctest::Approx(curve.maximum_power().power_w));
                CHECK(at.harvest_fraction() > 0.0);
                CHECK(at.harvest_fraction() <= 1.0);
                CHECK(at.power_low_w <= at.power_w);
                CHECK(at.power_w <= at.power_high_w);
            }
        }
    }
}

// Source: a scan of 201 x 21 points between the ends of ohms and current.
TEST_CASE("the ends of the band are those of a scan over resistance and current") {
    for (const char* element : {"tubular-1000-120", "immersion-dc-600-48", "strip-250-120",
                                "oven-bake-2585-240", "range-coil-1350-240"}) {
        for (const heatmatch::Hookup panels : heatmatch::hookups_up_to(3)) {
            Circuit circuit = bench_circuit("silicon-60-cell-245", panels, element, {1, 1});
            circuit.runs = {run_of_ohm("array", 0.4)};
            CAPTURE(circuit.title());
            for (const double sun : {200.0, 600.0, 1000.0}) {
                CAPTURE(sun);
                double low = 1e300;
                double high = 0.0;
                for (int i = 0; i <= 200; ++i) {
                    const double ohm =
                        circuit.bank.low_ohm() +
                        (circuit.bank.high_ohm() - circuit.bank.low_ohm()) * i / 200.0;
                    for (int j = 0; j <= 20; ++j) {
                        const double factor =
                            circuit.panel.current_factor_low +
                            (circuit.panel.current_factor_high - circuit.panel.current_factor_low) *
                                j / 20.0;
                        const double power = power_at(circuit, factor, ohm, sun, 40.0);
                        low = std::min(low, power);
                        high = std::max(high, power);
                    }
                }
                const Delivered at = deliver(circuit, sun, 40.0);
                CHECK(at.power_low_w <= low * (1.0 + 1e-9));
                CHECK(at.power_low_w == doctest::Approx(low).epsilon(1e-4));
                CHECK(at.power_high_w >= high * (1.0 - 1e-9));
                CHECK(at.power_high_w == doctest::Approx(high).epsilon(1e-4));
            }
        }
    }
}

// Source: arithmetic on the label, 37.53 V, -0.347 %/K, 8.66 A.
TEST_CASE("cold voltage is proportional to panels in series, current to strings") {
    const Circuit circuit = usual_circuit({2, 3});
    CHECK(circuit.cold_voltage_v() ==
          doctest::Approx(2.0 * 37.53 * (1.0 + 0.00347 * 45.0)).epsilon(1e-12));
    CHECK(circuit.short_circuit_current_a() == doctest::Approx(3.0 * 8.66).epsilon(1e-12));
}

TEST_CASE("a circuit is named by its panels, its element and both hook-ups") {
    CHECK(usual_circuit({2, 1}, {1, 2}).title() == "bench 2S1P into tubular-1000-120 1S2P");
}

TEST_CASE("without light nothing is delivered, and nothing is harvested") {
    const Delivered at = deliver(usual_circuit(), 0.0, 5.0);
    CHECK(at.power_w == 0.0);
    CHECK(at.power_high_w == 0.0);
    CHECK(at.harvest_fraction() == 0.0);
}
