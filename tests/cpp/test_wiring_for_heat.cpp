#include "bench_wires.hpp"
#include "demo.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::RunParts;
using heatmatch::Severity;
using heatmatch::Wire;

namespace {

/// The demo's standing circuit, the run at its element as given, with its heat.
struct Heated {
    Installation installation = demo();
    Circuit circuit;

    explicit Heated(std::optional<double> air_c,
                    heatmatch::SurroundingsKind kind = heatmatch::SurroundingsKind::open_air,
                    const std::string& element = "storage-rod-1000-240", bool wet = true) {
        installation.goals.budget.reset();
        installation.site.wet = wet;
        heatmatch::WireRun& tail = installation.runs.back();
        tail.wire = "choose";
        tail.surroundings = {.kind = kind, .air_c = air_c};
        installation.circuit->element = element;
        const auto candidate = heatmatch::assess(starter(), installation);
        circuit = candidate.circuit;
        installation.site = candidate.site;  // judged in the brightest sun of its weather
    }

    /// Headrooms of the run at the element with a wire, its joints left out; none where it fails.
    [[nodiscard]] std::optional<double> headroom_with(const Wire& wire) const {
        Circuit with = circuit;
        if (wire.voltage_rating_v.value_or(0.0) < circuit.cold_voltage_v()) return std::nullopt;
        with.runs.back() = heatmatch::parts_of_run(starter(), with.runs.back().run, wire);
        if (!heatmatch::wire_may_lie(with, installation.site, with.runs.back()))
            return std::nullopt;
        const auto candidate = heatmatch::evaluate(with, installation, {}, starter());
        double least = 1.0;
        for (const Margin& margin : candidate.margins()) {
            if (margin.subject != "run \"hot tail\"") continue;
            if (margin.name.find("joint") != std::string::npos) continue;
            if (margin.name == "placing") continue;  // of metal around it, which no wire changes
            if (margin.name == "run current" && margin.severity == Severity::not_assessed) continue;
            if (margin.severity == Severity::none) continue;
            // Insulation that the element dries, far from its dry limit.
            if (margin.name == "insulation" && margin.severity == Severity::caution &&
                margin.headroom.value_or(-1.0) >= 0.1) {
                continue;
            }
            if (margin.severity != Severity::caution) return std::nullopt;
            least = std::min(least, margin.headroom.value_or(-1.0));
        }
        return least > 0.0 ? std::optional(least) : std::nullopt;
    }
};

}  // namespace

// Source: every wire of the starter tried in the test.
TEST_CASE("the wire at the element is the cheapest that its heat leaves far from every limit") {
    std::set<std::string> seen;
    for (double air_c : {30.0, 90.0, 120.0, 150.0, 180.0, 230.0, 330.0}) {
        for (const char* element : {"storage-rod-1000-240", "oven-bake-2585-240"}) {
            // Dry: nothing for more than 260 °C has a rating for wet places.
            const Heated heated(air_c, heatmatch::SurroundingsKind::open_air, element, false);
            CAPTURE(air_c);
            CAPTURE(std::string(element));
            const auto& laid = heated.circuit.runs.back().wire;
            double most = 0.0;
            for (const Wire& wire : starter().wires) {
                most = std::max(most, heated.headroom_with(wire).value_or(0.0));
            }
            REQUIRE(laid.has_value() == (most > 0.0));
            if (!laid) continue;
            seen.insert(laid->id);
            CHECK(heated.headroom_with(*laid).value_or(0.0) == doctest::Approx(most));
            for (const Wire& wire : starter().wires) {
                if (heated.headroom_with(wire).value_or(0.0) < 1.0) continue;
                CHECK(price_of_wire(*laid) <= price_of_wire(wire));
            }
        }
    }
    CHECK(seen.size() >= 3);
}

TEST_CASE("the heat of the element changes the choice for the better, and never for the worse") {
    int better = 0;
    for (const char* element : {"storage-rod-1000-240", "oven-bake-2585-240"}) {
        for (double air_c = 60.0; air_c <= 260.0; air_c += 10.0) {
            const Heated heated(air_c, heatmatch::SurroundingsKind::open_air, element);
            const Circuit& circuit = heated.circuit;
            const auto without = heatmatch::lay_runs(starter(), heated.installation, circuit);
            CAPTURE(air_c);
            if (!without.back().wire) continue;
            REQUIRE(circuit.runs.back().wire);
            const double before = heated.headroom_with(*without.back().wire).value_or(0.0);
            const double after = heated.headroom_with(*circuit.runs.back().wire).value_or(0.0);
            CHECK(after >= before);
            better += after > before ? 1 : 0;
        }
    }
    CHECK(better >= 2);
}

// Source: common practice, no source: wire for 150 °C or more at the end of an element.
TEST_CASE(
    "where nothing is stated around the element its wire is one for hot places, with a "
    "remark") {
    const Heated heated(std::nullopt);
    const RunParts& tail = heated.circuit.runs.back();
    REQUIRE(tail.insulation);
    CHECK(tail.insulation->limit_c >= 150.0);
    CHECK_FALSE(tail.run.surroundings.air_c);
    const auto candidate = heatmatch::assess(starter(), heated.installation);
    const auto assumed = candidate.assumed();
    CHECK(std::any_of(assumed.begin(), assumed.end(), [&tail](const auto& each) {
        return each.field == "wire" && each.value.text() == tail.wire->id &&
               each.source.text().find("100 °C") != std::string::npos;
    }));
    CHECK(candidate.not_assessed() > 0);
}

TEST_CASE("a wire is chosen for a run in the bed") {
    Heated buried(std::nullopt, heatmatch::SurroundingsKind::bed);
    REQUIRE(buried.circuit.runs.back().wire);
    CHECK(buried.headroom_with(*buried.circuit.runs.back().wire).value_or(0.0) > 0.0);
}

TEST_CASE("a chosen wire at the element counts in a candidate's price, and against the budget") {
    Heated heated(120.0);
    Installation& installation = heated.installation;
    installation.elements = {
        {.any = heatmatch::ElementFilter{.family = {"oven lower"}}, .count = 4}};
    const auto ranking = heatmatch::rank(starter(), installation, keep_all());
    REQUIRE(!ranking.candidates.empty());
    double dearest = 0.0;
    for (const auto& candidate : ranking.candidates) {
        REQUIRE(candidate.circuit.runs.back().wire);
        CHECK(candidate.severity() != Severity::danger);
        if (candidate.price_to_buy) dearest = std::max(dearest, *candidate.price_to_buy);
    }
    installation.goals.budget = 0.5 * dearest;
    for (const auto& candidate : heatmatch::rank(starter(), installation, keep_all()).candidates) {
        CHECK(candidate.price_to_buy.value_or(2.0 * dearest) <= 0.5 * dearest);
    }
}
