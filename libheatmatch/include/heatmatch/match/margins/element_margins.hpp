#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// One element of an unlike bank as a circuit of its own, with its load and its heat.
struct ElementSeen {
    std::size_t element = 0;  //!< in the order of the bank
    std::string title{};      //!< `element "rod-a"`
    Circuit circuit{};
    Extremes bright{};
    std::optional<HeatPoint> heat{};  //!< empty where it is not known
};

/// All elements of the unlike bank of a circuit, each with the others at their largest powers.
[[nodiscard]] std::vector<ElementSeen> elements_seen(const Circuit& circuit,
                                                     const Extremes& bright);

/// The highest temperature of each kind over all elements; empty where they are not known.
[[nodiscard]] std::optional<HeatPoint> hottest_of(const std::vector<ElementSeen>& seen);

/// Whether a limit of the circuit counts for every element of its bank.
[[nodiscard]] bool limit_counts_for_all(const std::vector<ElementSeen>& seen,
                                        const OpeningSite& site);

/// Margins of all elements: those of an element name it; equal elements in equal places, and what
/// all of them share, once, as the worst of them.
[[nodiscard]] std::vector<Margin> of_each_element(
    const std::vector<ElementSeen>& seen,
    const std::function<std::vector<Margin>(const ElementSeen& one)>& margins);
/// Of margins with one name and subject the worst.
[[nodiscard]] std::vector<Margin> worst_of_each(std::vector<Margin> margins);

/// The survivor sheath of one element, in the bed after each other one in turn has opened.
[[nodiscard]] Margin survivor_sheath_of(const ElementSeen& one, const Circuit& circuit,
                                        const Extremes& bright);

}  // namespace heatmatch
