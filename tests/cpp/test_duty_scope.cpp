#include "demo.hpp"

#include "heatmatch/match/candidate/duty_scope.hpp"

using namespace heatmatch;

namespace {

Circuit with_runs(std::initializer_list<std::optional<bool>> inside) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    for (const auto& each : inside) {
        RunParts parts = bench_run("pv-wire-10-awg", 20.0);
        parts.run.name = "run " + std::to_string(circuit.runs.size());
        parts.run.inside = each;
        circuit.runs.push_back(parts);
    }
    return circuit;
}

std::string steps_at(double volts) {
    std::string reached;
    for (const DutyStep& step : duty_steps(volts)) reached += step.reached ? 'y' : 'n';
    return reached;
}

}  // namespace

// Source: IEC 60364-4-41, 414.4.5 (30 V, 60 V); NEC 690.11: 80 V or greater.
TEST_CASE("duties begin above 30 V and 60 V, and from 80 V on") {
    CHECK(steps_at(30.0) == "nnn");
    CHECK(steps_at(30.1) == "ynn");
    CHECK(steps_at(60.0) == "ynn");
    CHECK(steps_at(60.1) == "yyn");
    CHECK(steps_at(79.9) == "yyn");
    CHECK(steps_at(80.0) == "yyy");
}

TEST_CASE("a wire enters a building unless each is stated to stay outside") {
    const auto enters = [](std::initializer_list<std::optional<bool>> inside) {
        return duty_scope(with_runs(inside), cold_site).enters_building();
    };
    CHECK(enters({false, false}) == Answer::no);
    CHECK(enters({false, true}) == Answer::yes);
    CHECK(enters({false, std::nullopt}) == Answer::unknown);
    CHECK(enters({true, std::nullopt}) == Answer::yes);
    CHECK(enters({}) == Answer::unknown);
}

TEST_CASE("only panels and wires all stated to be off buildings are off buildings") {
    const auto on = [](std::optional<ArrayPlace> array_on, std::optional<bool> inside) {
        const Site site{.record_low_c = -20.0, .array_on = array_on};
        return duty_scope(with_runs({inside}), site).on_building();
    };
    CHECK(on(ArrayPlace::building, false) == Answer::yes);
    CHECK(on(ArrayPlace::ground, true) == Answer::yes);
    CHECK(on(ArrayPlace::ground, false) == Answer::no);
    CHECK(on(ArrayPlace::ground, std::nullopt) == Answer::unknown);
    CHECK(on(std::nullopt, false) == Answer::unknown);
    CHECK(on(std::nullopt, true) == Answer::yes);
}

// Source: NEC 690.8(A)(1): 1.25 times the short-circuit current; label 8.7 A or what the panel has.
TEST_CASE("the scope has the cold voltage and the continuous current") {
    const Circuit circuit = with_runs({true});
    const DutyScope scope = duty_scope(circuit, cold_site);
    CHECK(scope.cold_v == circuit.cold_voltage_v());
    CHECK(scope.lasting_a == doctest::Approx(1.25 * circuit.short_circuit_current_a()));
    CHECK(scope.inside == std::vector<std::string>{"run 0"});
}
