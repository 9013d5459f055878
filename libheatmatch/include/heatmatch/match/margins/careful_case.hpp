#pragma once

#include <string>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// A fact that nobody stated and whose field names a careful end.
struct UnstatedFact {
    std::string part{};   //!< `site`, `store`, `run "feed"`
    std::string field{};  //!< `wet`

    friend bool operator==(const UnstatedFact&, const UnstatedFact&) = default;
};

/// A circuit at its site with unstated facts at the careful end of their fields.
struct CarefulCase {
    Circuit circuit{};
    Site site{};
    std::vector<UnstatedFact> facts{};  //!< that were filled in
};

/// Every unstated fact of the site, the store, the runs, the devices and their parts at its careful
/// end; with `only`, that one alone.
[[nodiscard]] CarefulCase careful_case(const Circuit& circuit, const Site& site,
                                       const UnstatedFact* only = nullptr);

/// `check(circuit, site)` as it is likely and with every unstated fact at its careful end, put
/// together by compare_with_careful().
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
