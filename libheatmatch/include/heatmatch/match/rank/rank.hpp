#pragma once

#include <map>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"

namespace heatmatch {

/// Candidates in order, and a summary of the rejected ones.
struct Ranking {
    std::vector<Candidate> candidates{};           //!< without danger, best first
    std::vector<Candidate> rejected{};             //!< with a danger, most heat first
    std::map<std::string, std::size_t> reasons{};  //!< margin -> number of pairings it rejected
    std::vector<Candidate> pareto{};               //!< Pareto-optimal, see below
    std::size_t evaluated = 0;                     //!< number of pairings screened
    std::vector<Condition> conditions{};
    bool by_season = false;  //!< ordered by season energy, not by mean power
    Sentences remarks{};     //!< remarks for the reader
};

/// Ranks every owned panel group x allowed element x bank x hook-up. The screen evaluates all of
/// them. The number kept does not grow with that number, except for the Pareto-optimal ones.
/// Margins of kept candidates are computed when they are read. Order: energy over the season (mean
/// power over the conditions without weather) in steps of 1 %, fewest margins not assessed, largest
/// of the smallest headrooms, lowest purchase price. Candidates with a danger, or above the budget,
/// are counted in `reasons` under the first failed check: array and runs, sheath voltage,
/// terminals, element power, budget. `parts` is only read: several threads may rank at once. Throws
/// InvalidInput or NotFound for an installation that is not valid.
[[nodiscard]] Ranking rank(const Parts& parts, const Installation& installation,
                           const RankOptions& options = {});

}  // namespace heatmatch
