#include "heatmatch/match/plan/plan.hpp"

#include "planner.hpp"
#include "sentences.hpp"

#include <algorithm>

namespace heatmatch {

using plan_sentences::say;

namespace {

Sentence total_of(const Bill& bill) {
    const auto total = bill.typical();
    if (!total) return say<"plan.price_not_known">();
    return say<"plan.price">(with<"price">(Amount{.value = *total, .decimals = 0}),
                             with<"currency">(Name{bill.currency}));
}

}  // namespace

double Plan::gap() const {
    return kwh > 0.0 ? std::max(0.0, at_most_kwh / kwh - 1.0) : 0.0;
}

Plan plan(const Parts& catalog, const Installation& installation, const RankOptions& options) {
    const auto task = PlanTask::make(catalog, installation, options);
    return Planner(*task, catalog, options).make();
}

Sentences Plan::summary() const {
    Sentences lines;
    const auto a_day = [this](double season_kwh) {
        return Amount{.value = season_kwh / days, .unit = unit::kilowatt_hour};
    };
    if (!circuits.empty()) {
        lines.push_back(
            circuits.size() == 1
                ? say<"plan.answer_of_one">(with<"heat">(a_day(kwh)), with<"price">(total_of(bill)))
                : say<"plan.answer">(with<"count">(static_cast<double>(circuits.size())),
                                     with<"heat">(a_day(kwh)), with<"price">(total_of(bill))));
        if (single && circuits.size() > 1) {
            lines.push_back(say<"plan.beside_single">(with<"heat">(a_day(single->objective()))));
        }
        lines.push_back(say<"plan.required_headroom">(
            with<"headroom">(Amount{.value = headroom, .decimals = 2})));
        lines.push_back(say<"plan.bounds">(with<"panels">(a_day(bounds.panels_kwh)),
                                           with<"store">(a_day(bounds.store_kwh)),
                                           with<"bill">(a_day(bounds.bill_kwh))));
    }
    for (const IdlePanels& panels : idle) {
        lines.push_back(say<"plan.idle">(with<"count">(static_cast<double>(panels.count)),
                                         with<"group">(panels.group), with<"why">(panels.why)));
    }
    for (const PlanOffer& offer : others) lines.push_back(offer.said);
    lines.insert(lines.end(), remarks.begin(), remarks.end());
    return lines;
}

}  // namespace heatmatch
