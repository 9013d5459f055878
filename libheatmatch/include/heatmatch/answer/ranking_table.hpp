#pragma once

#include <span>
#include <string>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// Whether any of them heats a store that is described.
[[nodiscard]] bool with_store(std::span<const Candidate* const> candidates);

/// What a table of candidates shows.
struct RankingTableOptions {
    bool share = true;     //!< of what the panels could give, beside the sheath too
    bool letters = false;  //!< rows by letters, for their places are none of the ranking
};

/// Candidates, a row each: panels, elements, heat of a day of the season (watts without weather)
/// with its band, what is near and what is to be bought, the sheath beside its limit.
[[nodiscard]] Table ranking_table(std::span<const Candidate* const> candidates,
                                  const RankingTableOptions& options = {});

/// What the columns of a ranking mean.
[[nodiscard]] Sentences ranking_legend(const Ranking& ranking, bool share = true);

/// The pairing in one line: panels and elements, each in its hook-up.
[[nodiscard]] Sentence pairing_sentence(const Circuit& circuit);

/// What is to be bought for a candidate, with its currency.
[[nodiscard]] Sentence price_sentence(const Candidate& candidate);

/// A letter for a place that is none of the ranking: a for 1, z for 26, aa for 27.
[[nodiscard]] std::string place_letter(std::size_t place);

}  // namespace heatmatch
