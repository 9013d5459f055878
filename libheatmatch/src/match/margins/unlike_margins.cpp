#include "heatmatch/match/margins/unlike_margins.hpp"

#include <iterator>
#include <utility>

#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/bank_margins.hpp"
#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch {

namespace {

void move_to(std::vector<Margin>& all, std::vector<Margin> more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace

UnlikeMargins unlike_margins(const Circuit& circuit, const Site& site, const Extremes& bright) {
    const std::vector<ElementSeen> seen = elements_seen(circuit, bright);
    const OpeningSite at = opening_site(site);
    UnlikeMargins made;
    made.bank = of_each_element(
        seen, [](const ElementSeen& one) { return element_margins(one.circuit, one.bright); });
    move_to(made.bank, load_margins(circuit));
    const bool limited = limit_counts_for_all(seen, at);
    move_to(made.heat, of_each_element(seen, [&](const ElementSeen& one) {
                if (!one.heat) return sheath_margins(one.circuit, one.heat, at);
                std::vector<Margin> margins = sheath_margins_in_use(one.circuit, one.heat);
                margins.push_back(stagnation_margin(one.circuit, *one.heat, limited));
                return margins;
            }));
    move_to(made.heat, of_each_element(seen, [&](const ElementSeen& one) {
                return limit_margins(one.circuit, one.heat, at);
            }));
    move_to(made.heat, of_each_element(seen, [&](const ElementSeen& one) {
                return std::vector{survivor_sheath_of(one, circuit, bright)};
            }));
    move_to(made.heat, of_each_element(seen, [&](const ElementSeen& one) {
                return tail_margins(one.circuit, site, one.bright, one.heat);
            }));
    move_to(made.heat, of_each_element(seen, [&](const ElementSeen& one) {
                return store_margins(one.circuit, one.heat, at);
            }));
    return made;
}

}  // namespace heatmatch
