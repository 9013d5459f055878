#pragma once

#include <cstddef>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// Why pairings were rejected, in one sentence.
[[nodiscard]] Sentence reasons_sentence(const Ranking& ranking);
/// Why no pairing is left: for dangers, for money, or for both.
[[nodiscard]] Sentence nothing_left(const Ranking& ranking);
[[nodiscard]] Sentence nothing_to_rank();

/// Heads of the tables: of the best, or of the best rejected ones where nothing is left; the same
/// with the reasons; of what no other beats.
[[nodiscard]] Sentence best_title(const Ranking& ranking);
[[nodiscard]] Sentence shown_title(const Ranking& ranking);
[[nodiscard]] Sentence front_title();
/// The last one for a table by letters of the first `shown`.
[[nodiscard]] Sentence front_letters_title(const Ranking& ranking, std::size_t shown);

/// The rejected pairing of most heat and why it was; empty where there is none.
[[nodiscard]] Sentence strongest_rejected(const Ranking& ranking);

}  // namespace heatmatch
