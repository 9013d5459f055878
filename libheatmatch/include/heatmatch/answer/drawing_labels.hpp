#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What is written at each part of the drawing of a circuit, in the words of a shop.
struct DrawingLabels {
    Sentences array{};                 //!< the panels, then their volts and amperes
    Sentences bank{};                  //!< the elements with their ohms
    Sentences working{};               //!< volts and amperes of the bank in full sun
    std::vector<Sentences> runs{};     //!< of each run: wire, then size and length
    std::vector<Sentences> devices{};  //!< of each device: its name, then what it does

    friend bool operator==(const DrawingLabels&, const DrawingLabels&) = default;
};

[[nodiscard]] DrawingLabels drawing_labels(const Candidate& candidate);

/// What lies where in the store: fill and size, then the elements, then what is around it. Empty
/// without a store.
[[nodiscard]] Sentences store_labels(const Candidate& candidate);

}  // namespace heatmatch
