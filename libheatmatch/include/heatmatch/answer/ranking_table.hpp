#pragma once

#include <span>
#include <string>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// Whether any of them has a described store.
[[nodiscard]] bool with_store(std::span<const Candidate* const> candidates);

/// What a table of candidates shows.
struct RankingTableOptions {
    bool share = true;     //!< with columns of utilization and of watts per heated length, also
                           //!< where the sheath is shown
    bool letters = false;  //!< letters instead of numbers, because the rows are not places of the
                           //!< ranking
};

/// Candidates, one row each: panels, elements, heat per day of the season (watts without weather)
/// with its band, smallest headroom, open-circuit volts at the record low, purchase price, and
/// sheath temperature beside its limit.
[[nodiscard]] Table ranking_table(std::span<const Candidate* const> candidates,
                                  const RankingTableOptions& options = {});

/// Head of a column of purchase prices, with their currency; `wide` where there is room for both.
[[nodiscard]] Sentence buy_head(const std::string& currency, bool wide);

/// Meaning of the columns of a ranking.
[[nodiscard]] Sentences ranking_legend(const Ranking& ranking, bool share = true);

/// The pairing in one line: panels and elements, each in its hook-up.
[[nodiscard]] Sentence pairing_sentence(const Circuit& circuit);

/// Purchase price of a candidate, with its currency.
[[nodiscard]] Sentence price_sentence(const Candidate& candidate);

/// Letter for a row that is not a place of the ranking: a for 1, z for 26, aa for 27.
[[nodiscard]] std::string place_letter(std::size_t place);

}  // namespace heatmatch
