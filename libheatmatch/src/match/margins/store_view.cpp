#include "store_view.hpp"

#include "sentences_of_stores.hpp"

#include <utility>

namespace heatmatch {

using margins_sentences::of_stores::say;

Margin heat_margin(const StoreView& view, const char* name, Severity consequence, double value_c,
                   std::optional<double> limit_c, Sentence said, std::string source) {
    Margin margin{.name = name,
                  .subject = view.store,
                  .consequence = consequence,
                  .value = value_c,
                  .limit = limit_c,
                  .unit = unit::celsius,
                  .said = std::move(said),
                  .source = std::move(source),
                  .assumed = view.heat.assumed};
    return margin;
}

std::vector<Margin> margins_without_heat(const Circuit& circuit, std::span<const char* const> names,
                                         Of subject) {
    const std::vector<std::string> missing = BankHeat::lacks(circuit.heat.get());
    Sentence why = say<"sheath.no_store">();
    if (circuit.heat && !circuit.heat->missing.empty()) {
        why = say<"sheath.needs">(with<"missing">(missing.front()));
    } else if (circuit.heat) {
        why = say<"sheath.misfit">(with<"misfit">(circuit.heat->misfit));
    }
    const bool of_store = subject == Of::store && circuit.heat && circuit.heat->store;
    const std::string whose = of_store ? "store of " + circuit.heat->store->medium.id
                                       : "element \"" + circuit.bank.element.id + '"';
    std::vector<Margin> margins;
    for (const char* name : names) margins.push_back(not_assessed(name, whose, why, missing));
    return margins;
}

}  // namespace heatmatch
