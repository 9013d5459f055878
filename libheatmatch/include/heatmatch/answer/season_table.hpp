#pragma once

#include <optional>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The month of the season with least heat, 1 to 12; nothing where the weather has no months.
[[nodiscard]] std::optional<int> darkest_month(const Season& season);

/// A column for each month the weather has: heat of a day, what the panels could give, the share.
[[nodiscard]] Table season_table(const Season& season);
/// Its title on a page that explains no more.
[[nodiscard]] Sentence season_months_title();

/// What a candidate delivers over the season, and why its best ohms are what they are.
[[nodiscard]] Sentences season_sentences(const Candidate& candidate);

}  // namespace heatmatch
