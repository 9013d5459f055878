#include "demo.hpp"
#include "long_run.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/run_ampacity.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

using namespace heatmatch;

namespace {

/// Two panels of 8.66 A in series, a run and a tail behind it, each fact of the run stated.
Circuit run_with_tail(std::string_view wire, std::optional<double> air_c, std::string_view kind,
                      Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run(wire, air_c, kind), bench_run("silicone-14-awg", 60.0)};
    circuit.runs.front().connector = find_connector(starter(), "pv-plug-4-mm");
    circuit.runs.front().run.surroundings.metal_raceway = false;
    circuit.runs.front().run.surroundings.roof_distance_mm = 900.0;
    circuit.runs.back().run.name = "tail";
    circuit.runs.back().run.carries = Carried::bank;
    return circuit;
}

/// Beside its careful case, as a candidate has it.
Margin judged_current(const Circuit& circuit, std::optional<WiringCode> code) {
    const auto check = [](const Circuit& as, const Site& at) { return run_margins(as, at); };
    return margin_of(judged(circuit, {.record_low_c = -20.0, .wet = false, .code = code}, check),
                     "run current", "\"bench\"");
}

int worst_of(const Margin& margin) {
    return badness(margin.worst_severity, margin.consequence);
}

/// From what is known to the careful end: worse or equal, headroom between -1 and 1.
bool no_kinder(const Margin& before, const Margin& after) {
    if (worst_of(after) < worst_of(before)) return false;
    if (!before.careful_headroom || !after.careful_headroom) return true;
    const auto clipped = [](double headroom) { return std::clamp(headroom, -1.0, 1.0); };
    return clipped(*after.careful_headroom) <= clipped(*before.careful_headroom) + 1e-9;
}

constexpr auto codes =
    std::to_array<std::optional<WiringCode>>({WiringCode::nec, WiringCode::iec, std::nullopt});
constexpr auto kinds =
    std::to_array<const char*>({"open air", "sunlit", "conduit", "cavity", "buried"});

}  // namespace

// Source: IEC 60364-5-52, table B.52.4: 4 mm2 in a pipe 32 A at 70 °C in 30 °C; its equation,
// sqrt((Tc - Ta)/(Tc0 - Ta0)), for a conductor that may reach 60 °C.
TEST_CASE("insulation for less than any column has the coolest one, corrected") {
    Circuit circuit = run_with_tail("h07v-k-4-mm2", 40.0, "conduit");
    circuit.runs.front().wire->ampacity_a.reset();
    circuit.runs.front().insulation->limit_c = 60.0;
    circuit.runs.front().insulation->limit_wet_c = 60.0;
    const Site site{.record_low_c = -20.0, .wet = false, .code = WiringCode::iec};
    const RunAmpacity found = run_ampacity(circuit, circuit.runs.front(), site);
    REQUIRE(found.corrected_a);
    CHECK(*found.corrected_a == doctest::Approx(32.0 * std::sqrt(20.0 / 40.0)));
    CHECK(found.limited);
    CHECK(found.whole);
}

// Source: the rule that a worse quantity is never better.
TEST_CASE("insulation with a lower limit never improves the current of its run") {
    for (const char* wire : {"pv-wire-10-awg", "thhn-12-awg", "xhhw-2-10-awg", "sjoow-12-awg",
                             "h07v-k-4-mm2", "ptfe-14-awg", "silicone-14-awg", "pv-cable-4-mm2"}) {
        for (const char* kind : kinds) {
            for (const auto& code : codes) {
                for (const double air_c : {20.0, 62.0, 100.0}) {
                    if (in_a_slow_build() && air_c != 62.0) continue;
                    Circuit circuit = run_with_tail(wire, air_c, kind, {2, 3});
                    Insulation& insulation = *circuit.runs.front().insulation;
                    Margin before = judged_current(circuit, code);
                    while (insulation.limit_c > 42.0) {
                        insulation.limit_c -= in_a_slow_build() ? 32.0 : 8.0;
                        const Margin now = judged_current(circuit, code);
                        CAPTURE(std::string(wire));
                        CAPTURE(std::string(kind));
                        CAPTURE(air_c);
                        CAPTURE(insulation.limit_c);
                        CHECK(no_kinder(before, now));
                        before = now;
                    }
                }
            }
        }
    }
}

// Source: the rules that a worse quantity, and a fact less, are never better.
TEST_CASE("hotter air, or air that is not stated, never improves the current of a run") {
    std::size_t drawn = 0;
    const std::size_t stride = in_a_slow_build() ? 7 : 2;
    for (const Wire& wire : starter().wires) {
        if (wire.insulation.empty()) continue;
        for (const char* kind : kinds) {
            for (const auto& code : codes) {
                if (++drawn % stride != 1) continue;  // 15 for each wire: the next has the others
                CAPTURE(wire.id);
                CAPTURE(std::string(kind));
                const Margin unknown =
                    judged_current(run_with_tail(wire.id, std::nullopt, kind, {2, 2}), code);
                CHECK(worst_of(unknown) == static_cast<int>(Severity::warning));
                Margin before = judged_current(run_with_tail(wire.id, 0.0, kind, {2, 2}), code);
                for (double air_c = 25.0; air_c <= 200.0; air_c += 25.0) {
                    const Margin now =
                        judged_current(run_with_tail(wire.id, air_c, kind, {2, 2}), code);
                    CAPTURE(air_c);
                    CHECK(no_kinder(before, now));
                    CHECK(no_kinder(now, unknown));
                    before = now;
                }
            }
        }
    }
}

// Source: NEC Table 310.16: wires in a raceway carry less than in free air, and a roof close below
// warms it; which of the two lies there nobody stated.
TEST_CASE("a raceway neither stated nor excluded is assessed at both ends") {
    for (const char* kind : {"open air", "sunlit"}) {
        for (const auto& code : codes) {
            for (const auto& roof_mm :
                 {std::optional<double>(), std::optional(0.0), std::optional(900.0)}) {
                for (const int loaded : {1, 2, 6}) {
                    Circuit circuit = run_with_tail("thhn-12-awg", 45.0, kind, {2, 2});
                    Surroundings& around = circuit.runs.front().run.surroundings;
                    around.loaded_conductors = loaded;
                    around.roof_distance_mm = roof_mm;
                    around.metal_raceway.reset();
                    const Margin unknown = judged_current(circuit, code);
                    for (const bool inside : {false, true}) {
                        around.metal_raceway = inside;
                        CHECK(no_kinder(judged_current(circuit, code), unknown));
                    }
                    // The likely case is that of wire in the open.
                    around.metal_raceway = false;
                    CHECK(judged_current(circuit, code).severity == unknown.severity);
                }
            }
        }
    }
}
