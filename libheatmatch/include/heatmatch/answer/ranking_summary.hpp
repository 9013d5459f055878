#pragma once

#include <cstddef>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// Why pairings were rejected, in one sentence.
[[nodiscard]] Sentence reasons_sentence(const Ranking& ranking);
/// How many pairings were evaluated and rejected, and which option lists the rest.
[[nodiscard]] Sentence short_ranking(const Ranking& ranking);
/// Why no pairing is left: a danger, the budget, or both.
[[nodiscard]] Sentence nothing_left(const Ranking& ranking);
[[nodiscard]] Sentence nothing_to_rank();

/// Titles of the tables: the best pairings, or the best rejected ones where none is left; the same
/// with the reasons; the Pareto-optimal ones.
[[nodiscard]] Sentence best_title(const Ranking& ranking);
[[nodiscard]] Sentence shown_title(const Ranking& ranking);
[[nodiscard]] Sentence front_title();
/// Title of the Pareto-optimal table with letters for the first `shown` rows.
[[nodiscard]] Sentence front_letters_title(const Ranking& ranking, std::size_t shown);

/// The rejected pairing with the most heat, and the reason; empty where there is none.
[[nodiscard]] Sentence strongest_rejected(const Ranking& ranking);

}  // namespace heatmatch
