#include "store_bench.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/heat/wire_temperature.hpp"
#include "heatmatch/match/margins/bank_margins.hpp"

using heatmatch::bank_margins;
using heatmatch::Circuit;
using heatmatch::Extremes;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// Two panels in series, 86.8 V at -20 °C; the starter's 1000 W rod for 120 V, 250 °C terminals.
Circuit circuit_of_bank(Hookup bank = {1, 1}) {
    return bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", bank);
}

Margin bank_margin(const Circuit& circuit, std::string_view name, const Extremes& extremes = {}) {
    return margin_of(bank_margins(circuit, extremes), name);
}

}  // namespace

// Source: the rating of the starter's element, 1000 W and 120 V.
TEST_CASE("an element's power and voltage are compared with its rating") {
    Circuit circuit = circuit_of_bank();
    check_judged(bank_margin(circuit, "element power", {.element_power_w = 450.0}), Severity::none,
                 450.0, 1000.0);
    check_judged(bank_margin(circuit, "element power", {.element_power_w = 1100.0}),
                 Severity::danger, 1100.0, 1000.0);
    check_judged(bank_margin(circuit, "element voltage", {.element_voltage_v = 80.0}),
                 Severity::none, 80.0, 120.0);
    check_judged(bank_margin(circuit, "element voltage", {.element_voltage_v = 130.0}),
                 Severity::warning, 130.0, 120.0);
    circuit.bank.element.rated_w.reset();
    circuit.bank.element.rated_v.reset();
    const Margin power = bank_margin(circuit, "element power", {.element_power_w = 450.0});
    check_not_assessed(power, "rated_w");
    CHECK(contains(power.sentence(), "450 W"));
    check_not_assessed(bank_margin(circuit, "element voltage", {.element_voltage_v = 80.0}),
                       "rated_v");
}

TEST_CASE("assumptions about an element are listed in its margins") {
    const Circuit circuit = circuit_of_bank();
    CHECK(bank_margin(circuit, "element power").assumed == circuit.bank.each.assumed);
    CHECK(bank_margin(circuit, "survivor power").assumed == circuit.bank.each.assumed);
    CHECK(!circuit.bank.each.assumed.empty());
}

// Source: arithmetic; the peak of 120 V alternating is 170 V.
TEST_CASE("after one earth fault the whole array voltage is across the sheath insulation") {
    Circuit circuit = circuit_of_bank();
    check_judged(bank_margin(circuit, "sheath voltage"), Severity::none, circuit.cold_voltage_v(),
                 120.0 * std::sqrt(2.0));
    circuit.panels = {3, 1};
    // 130 V: above the rated volts, below their peak, which counts only if they are alternating.
    circuit.bank.element.rated_dc.reset();
    check_judged(bank_margin(circuit, "sheath voltage"), Severity::warning,
                 circuit.cold_voltage_v(), 120.0 * std::sqrt(2.0));
    circuit.bank.element.rated_dc = false;
    check_judged(bank_margin(circuit, "sheath voltage"), Severity::caution,
                 circuit.cold_voltage_v(), 120.0 * std::sqrt(2.0));
    circuit.panels = {4, 1};
    check_judged(bank_margin(circuit, "sheath voltage"), Severity::danger, circuit.cold_voltage_v(),
                 120.0 * std::sqrt(2.0));
    // Elements in series share the volts across, not those to the sheath.
    circuit.bank.hookup = {4, 1};
    CHECK(bank_margin(circuit, "sheath voltage").severity == Severity::danger);
    circuit.bank.element.rated_v.reset();
    check_not_assessed(bank_margin(circuit, "sheath voltage"), "rated_v");
}

TEST_CASE("a survivor of an open branch is held against its rating") {
    Circuit circuit = circuit_of_bank({1, 2});
    check_judged(bank_margin(circuit, "survivor power", {.survivor_power_w = 600.0}),
                 Severity::none, 600.0, 1000.0);
    check_judged(bank_margin(circuit, "survivor power", {.survivor_power_w = 1200.0}),
                 Severity::warning, 1200.0, 1000.0);
    circuit.bank.element.rated_w.reset();
    check_not_assessed(bank_margin(circuit, "survivor power", {.survivor_power_w = 600.0}),
                       "rated_w");
    const Margin alone = bank_margin(circuit_of_bank({2, 1}), "survivor power");
    CHECK(alone.severity == Severity::none);
    CHECK(contains(alone.sentence(), "all heating stops"));
}

// Source: common practice, no source: 20 Mohm when new, 1 Mohm in service.
TEST_CASE("insulation to the sheath is required, and assessed against a lower limit") {
    Circuit circuit = circuit_of_bank();
    const Margin unknown = bank_margin(circuit, "earth fault");
    check_not_assessed(unknown, "insulation_resistance_mohm");
    CHECK(contains(unknown.sentence(), "500 V"));
    const auto measured = [&](double mohm) {
        circuit.bank.element.insulation_resistance_mohm = mohm;
        return bank_margin(circuit, "earth fault");
    };
    check_judged(measured(10.0), Severity::none, 10.0, 1.0, 20.0);
    check_judged(measured(1.5), Severity::caution, 1.5, 1.0, 20.0);
    check_judged(measured(0.2), Severity::warning, 0.2, 1.0, 20.0);
    CHECK(measured(500.0).severity == Severity::none);
    CHECK(*measured(500.0).headroom == 1.0);
    CHECK(contains(measured(500.0).sentence(), "500 Mohm"));
}

TEST_CASE("a thermostat inside, made for alternating current, is a warning") {
    Circuit circuit = circuit_of_bank();
    check_not_assessed(bank_margin(circuit, "built-in control"), "built_in_ac_control");
    circuit.bank.element.built_in_ac_control = false;
    CHECK(bank_margin(circuit, "built-in control").severity == Severity::none);
    circuit.bank.element.built_in_ac_control = true;
    const Margin inside = bank_margin(circuit, "built-in control");
    CHECK(inside.severity == Severity::warning);
    CHECK(contains(inside.sentence(), "built-in AC thermostat"));
    check_sentence(inside);
}

// Source: common practice, no source: low ohms run the panels near their short-circuit current.
TEST_CASE("a low resistance is a caution for shaded cells") {
    const Margin high = bank_margin(circuit_of_bank(), "shade stress");
    CHECK(high.severity == Severity::none);
    CHECK(*high.value < 60.0);
    const Circuit low = bench_circuit("silicon-60-cell-245", {2, 1}, "immersion-1500-120", {1, 4});
    const Margin stressed = bank_margin(low, "shade stress");
    CHECK(stressed.severity == Severity::caution);
    CHECK(*stressed.value > 98.0);
    CHECK(*stressed.value <= 100.0);
    check_sentence(stressed);
}

// Source: Ohm's law.
TEST_CASE("wire has its share of the resistance") {
    Circuit circuit = circuit_of_bank();
    check_not_assessed(bank_margin(circuit, "voltage drop"), "runs");
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    const auto share = [&] {
        const double wire = circuit.wire_ohm();
        return 100.0 * wire / (wire + circuit.bank.typical_ohm());
    };
    check_judged(bank_margin(circuit, "voltage drop"), Severity::none, share(), 3.0);
    circuit.runs.front().run.length_m = 60.0;
    CHECK(share() > 3.0);
    check_judged(bank_margin(circuit, "voltage drop"), Severity::caution, share(), 3.0);
}

// Source: copper melts at 1085 °C, by then R20 (1 + 0.00393 (1085 - 20)) of IEC 60028.
TEST_CASE("wire without a steady temperature counts as the hottest possible") {
    Circuit circuit = circuit_of_bank();
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    const double cold_pct = bank_margin(circuit, "voltage drop").value.value_or(0.0);
    circuit.runs.front().brightest.emplace().runaway = true;
    const double wire = circuit.wire_ohm_at(1085.0);
    const Margin drop = bank_margin(circuit, "voltage drop");
    CHECK(drop.value == doctest::Approx(100.0 * wire / (wire + circuit.bank.typical_ohm())));
    CHECK(drop.value.value_or(0.0) > 3.0 * cold_pct);
}

TEST_CASE("every element of the starter has the same eight margins, each with a sentence") {
    for (const heatmatch::Element& element : starter().elements) {
        CAPTURE(element.id);
        const Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, element.id, {1, 2});
        const auto margins =
            bank_margins(circuit, {.element_power_w = 100.0, .element_voltage_v = 50.0});
        CHECK(margins.size() == 8);
        for (const char* name :
             {"element power", "element voltage", "sheath voltage", "survivor power", "earth fault",
              "built-in control", "shade stress", "voltage drop"}) {
            CHECK(count_margins(margins, name) == 1);
        }
        for (const Margin& margin : margins) {
            check_sentence(margin);
            CHECK(!margin.source.empty());
        }
    }
}

// Source: IEC 60364-4-41, 30 V direct current for live parts that can be touched where it is damp;
// common practice, no source: open coils are live metal and are never buried.
TEST_CASE("bare wire without a sheath is a danger in any store") {
    const Circuit circuit =
        bench_circuit("silicon-60-cell-245", {2, 1}, "dryer-coil-5400-240", {1, 1});
    const Margin voltage = bank_margin(circuit, "sheath voltage");
    check_judged(voltage, Severity::danger, circuit.cold_voltage_v(), 30.0);
    CHECK(contains(voltage.sentence(), "Bare wire makes"));
    CHECK(voltage.source == "iec-60364-4-41");
    const Margin fault = bank_margin(circuit, "earth fault");
    CHECK(fault.severity == Severity::warning);
    CHECK(contains(fault.sentence(), "the bed and the vessel are live with it"));
}

// Common practice, no source: mains volts and the tolerance of watts go some 5 to 15 % above rated.
TEST_CASE("in a liquid it was made for an element may take somewhat more than its rating") {
    const auto power_in = [](const char* medium, const char* element, double share) {
        Circuit circuit = circuit_in(demo(), element, 1, medium);
        const double rated_w = *circuit.bank.element.rated_w;
        const Extremes extremes{.element_power_w = share * rated_w};
        const auto screened = heatmatch::screen_bank(
            extremes, heatmatch::bank_limits(circuit.bank, circuit.heat.get()), 0.0, std::nullopt);
        const Margin margin = bank_margin(circuit, "element power", extremes);
        CHECK(*margin.headroom == doctest::Approx(screened.headroom));
        check_sentence(margin);
        return margin;
    };
    const auto tank = [&](double share) { return power_in("water", "immersion-1000-230", share); };
    CHECK(tank(0.5).severity == Severity::none);
    CHECK(tank(1.049).severity == Severity::none);
    CHECK(tank(1.051).severity == Severity::warning);
    CHECK(tank(1.149).severity == Severity::warning);
    CHECK(tank(1.151).severity == Severity::danger);
    CHECK(*tank(1.1).limit == doctest::Approx(1150.0));
    CHECK(contains(tank(1.1).sentence(), "above its rated 1000 W"));
    CHECK_FALSE(contains(tank(0.5).sentence(), "sand"));
    CHECK(power_in("dry-sand", "immersion-1000-230", 1.01).severity == Severity::danger);
    // Its rating applies in air: the rating in water is not stated.
    CHECK(power_in("water", "storage-rod-1000-240", 1.01).severity == Severity::danger);
}

// Source: arithmetic; only an alternating voltage has a peak above its rating.
TEST_CASE("the peak of the rated voltage counts for alternating ratings only") {
    Circuit circuit = circuit_of_bank();
    circuit.bank.element.rated_dc.reset();
    CHECK(bank_margin(circuit, "sheath voltage").missing == std::vector<std::string>{"rated_dc"});
    circuit.bank.element.rated_dc = false;
    check_judged(bank_margin(circuit, "sheath voltage"), Severity::none, circuit.cold_voltage_v(),
                 120.0 * std::sqrt(2.0));
    CHECK(bank_margin(circuit, "sheath voltage").missing.empty());
    circuit.bank.element.rated_dc = true;
    check_judged(bank_margin(circuit, "sheath voltage"), Severity::none, circuit.cold_voltage_v(),
                 120.0);
    circuit.panels = {3, 1};
    const Margin direct = bank_margin(circuit, "sheath voltage");
    CHECK(direct.severity == Severity::danger);
    // Near the peak as well as far from it: a rating that is not stated remains a warning.
    circuit.bank.element.rated_dc.reset();
    for (const double share : {0.75, 0.95}) {
        circuit.bank.element.rated_v = circuit.cold_voltage_v() / (share * std::sqrt(2.0));
        CHECK(bank_margin(circuit, "sheath voltage").severity == Severity::warning);
    }
    CHECK(contains(direct.sentence(), "the rated DC voltage is 120 V"));
}
