#pragma once

#include "screen.hpp"
#include "tally.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace heatmatch {

/// The pairings that a ranking recommends and names beside it.
struct Recommendation {
    std::optional<Pairing> first{};
    std::vector<std::pair<AlternativeKind, Pairing>> alternatives{};

    [[nodiscard]] std::vector<Pairing> all() const;
};

/// Alternatives that have the array, the element and the number of elements of one before are left
/// out.
[[nodiscard]] Recommendation recommend(const ScreenContext& context, const Shortlist& shortlist);

/// The facts or the purchase that a recommendation lacks, found by screening again with fewer
/// requirements: without the budget, then without every deciding margin assessed. `judged` is the
/// installation of the context; both are restored.
[[nodiscard]] Sentence what_lacks(ScreenContext& context, Installation& judged);

}  // namespace heatmatch
