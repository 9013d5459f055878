#include "heatmatch/answer/plan_line.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

Sentence plan_money(double sum, const std::string& currency) {
    Sentence amount = number_cell(sum, 0, unit::money);
    if (currency.empty()) return amount;
    return say<"cell.money">(with<"amount">(std::move(amount)), with<"currency">(currency));
}

Sentence plan_price(const Bill& bill) {
    const auto total = bill.typical();
    if (!total) return say<"first.plan_unpriced">();
    if (!bill.budget) return plan_money(*total, bill.currency);
    return say<"first.plan_bill">(with<"bill">(number_cell(*total, 0, unit::money)),
                                  with<"budget">(plan_money(*bill.budget, bill.currency)));
}

}  // namespace

Sentence plan_line(const Plan* plan) {
    if (plan == nullptr) return say<"first.plan_pointer">();
    if (plan->circuits.empty()) return say<"first.no_plan">();
    double cold_v = 0.0;
    for (const Candidate& each : plan->circuits) {
        cold_v = std::max(cold_v, each.circuit.cold_voltage_v());
    }
    const auto count = with<"count">(number(static_cast<double>(plan->circuits.size()), 0));
    const Amount heat{.value = plan->mean_kwh_per_day(),
                      .unit = unit::kilowatt_hour,
                      .shown = Shown::whole,
                      .decimals = Amount::fit_decimals};
    return say<"first.plan">(
        with<"heat">(heat),
        with<"circuits">(plan->circuits.size() == 1 ? say<"first.one_circuit">(count)
                                                    : say<"first.many_circuits">(count)),
        with<"price">(plan_price(plan->bill)),
        with<"cold">(Amount{.value = cold_v, .unit = unit::volt, .decimals = 0}));
}

}  // namespace heatmatch
