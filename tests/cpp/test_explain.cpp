#include "demo.hpp"
#include "long_run.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/candidate/explain.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

using heatmatch::assess;
using heatmatch::Candidate;
using heatmatch::explain;
using heatmatch::Step;
using heatmatch::Trace;
using heatmatch::UnitSystem;

namespace {

bool has_step(const Trace& trace, const std::string& name) {
    return std::any_of(trace.begin(), trace.end(),
                       [&](const Step& step) { return step.name.text() == name; });
}

Step step_named(const Trace& trace, const std::string& name) {
    const auto found = std::find_if(trace.begin(), trace.end(),
                                    [&](const Step& step) { return step.name.text() == name; });
    CAPTURE(name);
    REQUIRE(found != trace.end());
    return *found;
}

/// A result agrees with what its own numbers give; they are printed to four or five digits.
void check_recomputed(const Step& step, double recomputed) {
    CAPTURE(step.name.text());
    CAPTURE(step.numbers.text());
    CHECK(step.value == doctest::Approx(recomputed).epsilon(2e-4));
}

/// The kept ones of the demo; where sanitizers watch, the forty best.
std::vector<Candidate> some_candidates() {
    if (!in_a_slow_build()) return demo_ranking().candidates;
    return heatmatch::rank(starter(), demo(), {.top = 40, .keep_rejected = 0}).candidates;
}

const Trace& demo_trace() {
    static const Trace trace = explain(assess(starter(), demo()));
    return trace;
}

}  // namespace

TEST_CASE("the heat of the season is explained where there is weather") {
    const heatmatch::Candidate candidate = heatmatch::assess(starter(), demo());
    const heatmatch::Trace trace = heatmatch::explain(candidate);
    const auto value_of = [&trace](const std::string& name) {
        for (const heatmatch::Step& step : trace) {
            if (step.name.text() == name) return step.value;
        }
        return std::nan("");
    };
    CHECK(value_of("heat of the season") == candidate.season->kwh);
    CHECK(value_of("utilization of the season") == candidate.season->harvest_fraction());
    CHECK(value_of("best bank resistance for the season") == candidate.season->best_ohm);
    heatmatch::Installation plain = demo();
    plain.weather.reset();
    const heatmatch::Trace without = heatmatch::explain(heatmatch::assess(starter(), plain));
    CHECK(without.size() + 4 == trace.size());
}

TEST_CASE("nameplate values are there with their sources") {
    const auto& panel = heatmatch::find_panel(starter(), "silicon-60-cell-245");
    CHECK(step_named(demo_trace(), "panel, open-circuit voltage").value == panel.v_oc);
    CHECK(step_named(demo_trace(), "panel, short-circuit current").value == panel.i_sc);
    CHECK(step_named(demo_trace(), "panel, voltage at maximum power").value == *panel.v_mp);
    CHECK(step_named(demo_trace(), "panel, current at maximum power").value == *panel.i_mp);
    CHECK(step_named(demo_trace(), "element, rated voltage").value == 240.0);
    CHECK(step_named(demo_trace(), "element, rated power").value == 1000.0);
    for (const Step& step : demo_trace()) {
        const bool given = step.name.text().rfind("panel, ", 0) == 0 ||
                           step.name.text().rfind("element, ", 0) == 0;
        if (!given) continue;
        CAPTURE(step.name.text());
        CHECK(!step.source.empty());
        CHECK(!step.unit.empty());
    }
    CHECK(contains(step_named(demo_trace(), "panel, open-circuit voltage").source,
                   panel.provenance.source));
}

// Source: the formulas of the steps, with the numbers the steps themselves print.
TEST_CASE("the resistance recomputes from volts, watts and the alloy's factor") {
    const Step ohms = step_named(demo_trace(), "element resistance, typical");
    const auto n = numbers_in(ohms.numbers.text());
    REQUIRE(n.size() == 3);
    check_recomputed(ohms, n[0] * n[0] / n[1] * n[2]);
    const Step bank = step_named(demo_trace(), "bank resistance");
    const auto b = numbers_in(bank.numbers.text());
    REQUIRE(b.size() == 3);
    check_recomputed(bank, b[0] * b[1] / b[2]);
    CHECK(b[1] == 1.0);
    CHECK(b[2] == 2.0);
}

TEST_CASE("the cold voltage recomputes from the label, its factor and the panels in series") {
    const Step volts = step_named(demo_trace(), "cold voltage of the array");
    const auto n = numbers_in(volts.numbers.text());
    REQUIRE(n.size() == 3);
    check_recomputed(volts, n[0] * n[1] * n[2]);
    const Step factor = step_named(demo_trace(), "cold voltage factor");
    // The label's -0.347 %/K, and the demo's record low of -32 °C.
    CHECK(factor.value == doctest::Approx(1.0 + 0.00347 * 57.0).epsilon(1e-9));
    CHECK(!factor.source.empty());
}

TEST_CASE("resistance of runs, load of one panel and Vmp/Imp recompute") {
    for (const char* name : {"home run", "along the wall", "hot tail"}) {
        const Step run = step_named(demo_trace(), std::string("resistance of \"") + name + '"');
        const auto n = numbers_in(run.numbers.text());
        REQUIRE(n.size() == 3);
        check_recomputed(run, n[0] * n[1] * n[2]);
    }
    const Step sees = step_named(demo_trace(), "load resistance of one panel");
    const auto s = numbers_in(sees.numbers.text());
    REQUIRE(s.size() == 4);
    check_recomputed(sees, (s[0] + s[1]) * s[2] / s[3]);
    const Step match = step_named(demo_trace(), "STC match of one panel");
    const auto m = numbers_in(match.numbers.text());
    REQUIRE(m.size() == 2);
    check_recomputed(match, m[0] / m[1]);
}

TEST_CASE("power recomputes as current squared times resistance, the mean as the mean") {
    int powers = 0;
    for (const Step& step : demo_trace()) {
        if (step.name.text().rfind("power at ", 0) != 0) continue;
        const auto n = numbers_in(step.numbers.text());
        REQUIRE(n.size() == 2);
        check_recomputed(step, n[0] * n[0] * n[1]);
        ++powers;
    }
    CHECK(powers == 3);
    const Step mean = step_named(demo_trace(), "mean power");
    const auto n = numbers_in(mean.numbers.text());
    REQUIRE(n.size() == 4);
    check_recomputed(mean, (n[0] + n[1] + n[2]) / n[3]);
    CHECK(n[3] == 3.0);
}

TEST_CASE("every headroom of the explanation is that of its margin") {
    const Candidate standing = assess(starter(), demo());
    for (const heatmatch::Margin& margin : standing.margins()) {
        if (!margin.headroom || !margin.value || !margin.limit) continue;
        CAPTURE(margin.name);
        const std::string name =
            "headroom of " + heatmatch::shown_margin_name(margin.name) + ", " + margin.subject;
        REQUIRE(has_step(demo_trace(), name));
        bool found = false;
        for (const Step& step : demo_trace()) {
            found = found || (step.name.text() == name && step.value == *margin.headroom);
        }
        CHECK(found);
    }
}

// Source: the header of Step: numbers are empty only for a value that was given.
TEST_CASE("a step that computes puts its numbers in") {
    for (const char* name : {"cold voltage factor", "element resistance, low end",
                             "element resistance, high end", "resistance of all runs"}) {
        CAPTURE(std::string(name));
        CHECK(!step_named(demo_trace(), name).numbers.empty());
    }
}

TEST_CASE("measured resistance is explained as measured") {
    heatmatch::Installation installation = demo();
    auto rod = heatmatch::find_element(starter(), "storage-rod-1000-240");
    rod.measured_resistance_ohm = 55.5;
    installation.parts.elements = {rod};
    const Trace trace = explain(assess(starter(), installation));
    CHECK(step_named(trace, "element, measured resistance").value == 55.5);
    const Step ohms = step_named(trace, "element resistance, typical");
    CHECK(contains(ohms.formula, "factor"));
    CHECK(ohms.value > 55.0);
    CHECK_FALSE(contains(ohms.formula, "V²"));
}

TEST_CASE("a class default is explained as one, not as the label") {
    heatmatch::Installation installation = demo();
    auto panel = heatmatch::find_panel(starter(), "silicon-60-cell-245");
    panel.beta_voc_pct_per_k.reset();
    installation.parts.panels = {panel};
    const Trace trace = explain(assess(starter(), installation));
    CHECK(contains(step_named(trace, "panel, temperature coefficient of voltage").source,
                   "class default"));
    const Step factor = step_named(trace, "cold voltage factor");
    CHECK(contains(factor.formula, "table"));
    CHECK(factor.source.text() == "nec-690-7");
    CHECK(factor.value == 1.23);  // NEC 690.7(A), -31 to -35 °C, from memory
}

TEST_CASE("age and readings explain the present panel by the values used") {
    heatmatch::Installation installation = demo();
    auto& owned = installation.panels.front();
    const Step measured =
        step_named(explain(assess(starter(), installation)), "panel today, current");
    CHECK(measured.source.text() == "measured");
    owned.measured.reset();
    const Step aged = step_named(explain(assess(starter(), installation)), "panel today, current");
    CHECK(aged.source.text() == "jordan-kurtz-2012");
    const auto n = numbers_in(aged.numbers.text());
    REQUIRE(n.size() == 3);
    check_recomputed(aged, n[0] - n[1] * n[2]);
    // Only the volts were read: the current is still the age's.
    owned.measured = heatmatch::PanelMeasurement{
        .v_oc = 33.6, .irradiance_w_m2 = 815.0, .cell_temperature_c = 52.0};
    const Trace volts = explain(assess(starter(), installation));
    CHECK(step_named(volts, "panel today, current").source.text() == "jordan-kurtz-2012");
    CHECK(contains(step_named(volts, "panel today, current").formula, "age"));
    CHECK(step_named(volts, "panel today, voltage").source.text() == "measured");
}

TEST_CASE("every kept candidate of the demo can be explained") {
    for (const Candidate& candidate : some_candidates()) {
        const Trace trace = explain(candidate);
        CHECK(trace.size() > 20);
        for (const Step& step : trace) {
            CHECK(!step.name.empty());
            CHECK(!step.formula.empty());
            CHECK(std::isfinite(step.value));
        }
    }
}

// Source: the formulas of the steps; 1 m is 3.28084 ft, and 1 kft a thousand of them.
TEST_CASE("the numbers of a step recompute in US units too") {
    const auto us = [](const std::string& name) {
        return numbers_in(step_named(demo_trace(), name).numbers.text(UnitSystem::us));
    };
    const auto fahrenheit = [](double celsius) { return 32.0 + 1.8 * celsius; };
    const auto run = us("resistance of \"home run\"");
    REQUIRE(run.size() == 3);
    check_recomputed(step_named(demo_trace(), "resistance of \"home run\""),
                     run[0] * run[1] * run[2] / 1000.0);
    const Step judged = step_named(demo_trace(), "sheath, judged");
    const auto j = us("sheath, judged");
    REQUIRE(j.size() == 4);
    CHECK(j[0] + j[1] * (j[2] - j[3]) == doctest::Approx(fahrenheit(judged.value)).epsilon(2e-4));
    CHECK(contains(judged.numbers.text(UnitSystem::us), " °F"));
    const auto density = us("watts per centimeter");
    REQUIRE(density.size() == 3);
    const Step watts = step_named(demo_trace(), "watts per centimeter");
    CHECK(density[0] * density[1] / density[2] ==
          doctest::Approx(2.54 * watts.value).epsilon(2e-4));
    const std::string whole = said(watts).text(UnitSystem::us);
    CHECK(contains(whole, " in = " + heatmatch::format_number(2.54 * watts.value) + " W/in"));
}

TEST_CASE("a step has its result and source, without units of the other set") {
    const Step bank = step_named(demo_trace(), "bank resistance");
    CHECK(said(bank).text() ==
          "bank resistance: R x elements in series / branches = " + bank.numbers.text() + " = " +
              heatmatch::format_number(bank.value) + " ohm");
    const Step volts = step_named(demo_trace(), "panel, open-circuit voltage");
    CHECK(said(volts).text() ==
          "panel, open-circuit voltage: v_oc = 37.53 V [cec-module-list "
          "(representative)]");
    for (const Candidate& candidate : some_candidates()) {
        for (const Step& step : explain(candidate)) {
            const std::string si = said(step).text();
            const std::string us = said(step).text(UnitSystem::us);
            CAPTURE(si);
            CAPTURE(us);
            for (const char* other : {"°F", " ft", "W/in", "AWG"}) {
                CHECK_FALSE(contains(si, other));
            }
            // Per kelvin: its temperatures stay in °C.
            if (step.name.id() == "explain.cold_factor") continue;
            for (const char* other : {"°C", " mm", " cm", " m ", "ohm/m", "W/cm", " K"}) {
                CHECK_FALSE(contains(us, other));
            }
        }
    }
}
