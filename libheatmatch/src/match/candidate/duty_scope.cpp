#include "heatmatch/match/candidate/duty_scope.hpp"

#include "sentences_of_duties.hpp"

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

namespace {

using candidate_sentences::of_duties::say;

}  // namespace

Answer DutyScope::enters_building() const {
    if (!inside.empty()) return Answer::yes;
    return untold.empty() ? Answer::no : Answer::unknown;
}

Answer DutyScope::on_building() const {
    const Answer enters = enters_building();
    if (array_on == ArrayPlace::building) return Answer::yes;
    return enters == Answer::no && !array_on ? Answer::unknown : enters;
}

DutyScope duty_scope(const Circuit& circuit, const Site& site) {
    DutyScope scope{.cold_v = circuit.cold_voltage_v(),
                    .lasting_a = lasting_current_a(circuit.short_circuit_current_a()),
                    .array_on = site.array_on,
                    .earthing = site.earthing,
                    .code = site.code};
    for (const RunParts& parts : circuit.runs) {
        if (!parts.run.inside) {
            scope.untold.push_back(parts.run.name);
        } else if (*parts.run.inside) {
            scope.inside.push_back(parts.run.name);
        }
    }
    // Without runs the place of the wire is not stated.
    if (circuit.runs.empty()) scope.untold.emplace_back("runs");
    return scope;
}

std::vector<DutyStep> duty_steps(double cold_v) {
    return {{wet_step_v, cold_v > wet_step_v, say<"duty.step_wet">()},
            {dry_step_v, cold_v > dry_step_v, say<"duty.step_dry">()},
            {arc_step_v, cold_v >= arc_step_v, say<"duty.step_arc">()}};
}

}  // namespace heatmatch
