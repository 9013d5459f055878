#pragma once

#include <vector>

#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"

namespace heatmatch {

/// Assesses all existing circuits of an installation as candidates, in their order, whatever their
/// margins. They share one store: all legs lie in it together, and every margin of heat is judged
/// with the other circuits at their largest power in full sun, all at the same time (careful where
/// their planes differ). A limit counts only where limits open every circuit. Throws InvalidInput
/// if the installation describes none, or uses more panels or elements than are owned.
[[nodiscard]] std::vector<Candidate> assess_circuits(const Parts& parts,
                                                     const Installation& installation,
                                                     const RankOptions& options = {});

/// The same for the only existing circuit. Throws InvalidInput if there are several, too.
[[nodiscard]] Candidate assess(const Parts& parts, const Installation& installation,
                               const RankOptions& options = {});

}  // namespace heatmatch
