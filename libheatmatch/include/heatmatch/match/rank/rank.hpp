#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"
#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

/// Candidates in order, and a summary of the rejected ones.
struct Ranking {
    std::vector<Candidate> candidates{};           //!< without danger, best first
    std::vector<Candidate> rejected{};             //!< with a danger, most heat first
    std::map<std::string, std::size_t> reasons{};  //!< margin -> number of pairings it rejected
    std::vector<Candidate> pareto{};               //!< Pareto-optimal, see below
    /// Of those without a likely danger, with every deciding margin assessed and a known bill
    /// within the budget: of those with at least 95 % of their largest objective the one with most
    /// headroom in steps of 0.05 up to 0.30, then smallest bill, fewest parts, most objective.
    /// Those that an unstated fact may make a danger count only where there is no other.
    std::optional<Candidate> recommended{};
    std::vector<Alternative> alternatives{};  //!< each differs in array, element or their number
    Sentence lacking{};                 //!< what a recommendation lacks; empty where there is one
    std::size_t evaluated = 0;          //!< number of pairings screened
    std::size_t above_volts = 0;        //!< pairings left out, whose array exceeds `volts_max`
    std::optional<double> volts_max{};  //!< of an array at the record low, at most [V]
    std::vector<Condition> conditions{};
    bool by_season = false;  //!< ordered by season energy, not by mean power
    Sentences remarks{};     //!< remarks for the reader
};

/// Ranks every owned panel group x allowed element x bank x hook-up. The screen evaluates all of
/// them. The number kept does not grow with that number, except for the Pareto-optimal ones.
/// Margins of kept candidates are computed when they are read. Banks of one element and one ratio
/// of series to parallel are one load on an array: one is folded under another where it has no more
/// headroom (up to 0.30), no fewer margins not assessed, no better worst severity and no smaller
/// known bill. Order: energy over the season (mean
/// power over the conditions without weather) in steps of 1 %, fewest margins not assessed, largest
/// of the smallest headrooms, lowest purchase price. Candidates with a danger, or above the budget,
/// are counted in `reasons` under the first failed check: array and runs, sheath voltage,
/// terminals, element power, budget. Arrays above the voltage of the goals are left out and counted
/// apart. `parts` is only read: several threads may rank at once. Throws
/// InvalidInput or NotFound for an installation that is not valid.
[[nodiscard]] Ranking rank(const Parts& parts, const Installation& installation,
                           const RankOptions& options = {});

}  // namespace heatmatch
