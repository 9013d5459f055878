#pragma once

#include <map>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"

namespace heatmatch {

/// Candidates in order, and what became of the others.
struct Ranking {
    std::vector<Candidate> candidates{};           //!< without danger, best first
    std::vector<Candidate> rejected{};             //!< with danger, most heat first
    std::map<std::string, std::size_t> reasons{};  //!< margin -> how many it rejected
    std::vector<Candidate> pareto{};               //!< no other beats them in everything, see below
    std::size_t evaluated = 0;                     //!< pairings looked at
    std::vector<Condition> conditions{};
    bool by_season = false;  //!< ordered by season energy, not by mean power
    Sentences remarks{};     //!< what the reader should know first
};

/// Ranks every owned panel group x allowed element x bank x hook-up. The screen looks at all of
/// them; what it keeps does not grow with their number, but for the front; margins of what is
/// kept are made when they are read. Order: energy over the season (mean power over the conditions
/// without weather) in steps of 1 %, fewest margins not assessed, largest of the smallest
/// headrooms, lowest price to buy. Candidates with a danger, or above the budget, are counted in
/// `reasons`, each by the first check it fails: array and runs, sheath voltage, terminals, element
/// power, budget. Reads `parts` only: several threads may rank at once. Throws InvalidInput or
/// NotFound for an installation that cannot be understood.
[[nodiscard]] Ranking rank(const Parts& parts, const Installation& installation,
                           const RankOptions& options = {});

}  // namespace heatmatch
