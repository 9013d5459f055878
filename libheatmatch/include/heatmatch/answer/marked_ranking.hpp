#pragma once

#include <cstddef>
#include <optional>

#include "heatmatch/answer/ranking_table.hpp"
#include "heatmatch/setting/installation.hpp"

/// A ranking with its recommended circuit marked, and what it does not use.
namespace heatmatch {

/// Place of a circuit among the candidates, from 1; nothing where it is not kept.
[[nodiscard]] std::optional<std::size_t> place_of(const Ranking& ranking,
                                                  const Candidate& candidate);
[[nodiscard]] bool is_recommended(const Ranking& ranking, const Candidate& candidate);

/// The first `top` candidates with their places. The recommended circuit is marked; where it is not
/// among them it is the first row. A place with a question mark: a deciding check is not assessed.
[[nodiscard]] Table marked_table(const Ranking& ranking, std::size_t top,
                                 const RankingTableOptions& options = {});
/// What the marks of its places mean.
[[nodiscard]] Sentences marks_legend(const Ranking& ranking);
/// The same with its columns in short.
[[nodiscard]] Sentences short_legend(const Ranking& ranking);

/// That nothing is recommended, why, and which circuit is shown instead.
[[nodiscard]] Sentence nearest_instead(const Ranking& ranking, const Candidate& shown);

/// Groups of panels and named elements of an installation that no candidate has, each with the
/// first check of the rejected pairing that is nearest to its limit.
[[nodiscard]] Sentences unused_lines(const Ranking& ranking, const Installation& installation);

}  // namespace heatmatch
