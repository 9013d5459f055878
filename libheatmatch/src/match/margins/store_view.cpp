#include "store_view.hpp"

#include <utility>

namespace heatmatch {

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

std::vector<Margin> margins_without_heat(const Circuit& circuit,
                                         std::span<const char* const> names) {
    std::vector<std::string> missing{"store"};
    std::string why =
        "No store is described: how hot things get is not known. In dry sand watts per "
        "centimetre of heated length decide, not rated watts.";
    if (circuit.heat && !circuit.heat->missing.empty()) {
        missing = circuit.heat->missing;
        why = "How hot it gets needs " + missing.front() + ".";
    } else if (circuit.heat) {
        missing = {"an element that fits"};
        why = "It does not fit the store: " + circuit.heat->misfit + ".";
    }
    std::vector<Margin> margins;
    for (const char* name : names) {
        margins.push_back(
            not_assessed(name, "element \"" + circuit.bank.element.id + '"', why, missing));
    }
    return margins;
}

}  // namespace heatmatch
