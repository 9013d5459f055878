#pragma once

#include <string>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// A fact that is not stated and whose field defines a careful end.
struct UnstatedFact {
    std::string part{};   //!< `site`, `store`, `run "feed"`
    std::string field{};  //!< `wet`

    friend bool operator==(const UnstatedFact&, const UnstatedFact&) = default;
};

/// A circuit at its site with unstated facts at the careful end of their fields.
struct CarefulCase {
    Circuit circuit{};
    Site site{};
    std::vector<UnstatedFact> facts{};  //!< facts that were set
};

/// Sets every unstated fact of the site, the store, the runs, the devices and their parts to its
/// careful end; with `only`, that fact alone.
[[nodiscard]] CarefulCase careful_case(const Circuit& circuit, const Site& site,
                                       const UnstatedFact* only = nullptr);

/// `check(circuit, site)` in the likely case and with every unstated fact at its careful end,
/// combined by compare_with_careful().
template <class Check>
[[nodiscard]] std::vector<Margin> judged(const Circuit& circuit, const Site& site,
                                         const Check& check) {
    std::vector<Margin> margins = check(circuit, site);
    const CarefulCase careful = careful_case(circuit, site);
    compare_with_careful(margins, careful.facts.empty() ? std::vector<Margin>{}
                                                        : check(careful.circuit, careful.site));
    return margins;
}

}  // namespace heatmatch
