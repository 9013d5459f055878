#include "heatmatch/match/margins/covered_margin.hpp"

#include "sentences_of_vessels.hpp"
#include "store_view.hpp"

#include <array>

namespace heatmatch {

using margins_sentences::of_vessels::say;

Margin covered_margin(const Circuit& circuit) {
    constexpr auto name = std::to_array<const char*>({"element covered"});
    if (!circuit.heat || !circuit.heat->store) {
        return margins_without_heat(circuit, name).front();
    }
    Margin margin{.name = name.front(),
                  .subject = "element \"" + circuit.bank.element.id + '"',
                  .severity = Severity::none,
                  .source = "common-practice"};
    const std::optional<bool>& covered = circuit.heat->store->store.element_covered;
    if (!circuit.heat->liquid) {
        margin.said = say<"covered.no_liquid">();
    } else if (!covered) {
        margin.severity = Severity::warning;
        margin.said = say<"covered.not_told">();
        margin.missing = {"store.element_covered"};
    } else if (!*covered) {
        margin.severity = Severity::danger;
        margin.headroom = -1.0;
        margin.said = say<"covered.not_always">();
    } else {
        margin.said = say<"covered.always">();
    }
    return margin;
}

}  // namespace heatmatch
