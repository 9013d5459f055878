#include "heatmatch/answer/plan_line.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>

namespace heatmatch {

using answer_sentences::say;

namespace {

int panels_of(const Plan& plan) {
    int count = 0;
    for (const Candidate& each : plan.circuits) count += each.circuit.panel_count();
    return count;
}

}  // namespace

Sentences plan_row(const Plan& plan) {
    if (plan.circuits.empty()) return {};
    double headroom = 1.0;
    double cold_v = 0.0;
    bool unknown = false;
    for (const Candidate& each : plan.circuits) {
        headroom = std::min(headroom, each.smallest_headroom());
        cold_v = std::max(cold_v, each.circuit.cold_voltage_v());
        unknown = unknown || each.heat_unknown();
    }
    const auto count = static_cast<double>(plan.circuits.size());
    const auto bill = plan.bill.typical();
    return {say<"first.everything">(),
            say<"first.plan_circuits">(with<"panels">(number(panels_of(plan), 0)),
                                       with<"circuits">(number(count, 0))),
            sentence_of(fitted(plan.mean_kwh_per_day(), unit::kilowatt_hour)),
            bill ? number_cell(*bill, 0, unit::money) : unknown_cell(),
            unknown ? unknown_cell() : number_cell(headroom, 2),
            number_cell(cold_v, 0, unit::volt)};
}

}  // namespace heatmatch
