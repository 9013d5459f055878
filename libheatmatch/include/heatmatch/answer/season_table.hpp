#pragma once

#include <optional>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Month of the season with the least heat, 1 to 12; empty where the weather has no months.
[[nodiscard]] std::optional<int> darkest_month(const Season& season);

/// One column for each month of the weather: heat per day, energy available from the panels,
/// utilization.
[[nodiscard]] Table season_table(const Season& season);
/// Title on a page without further explanation.
[[nodiscard]] Sentence season_months_title();

/// Heat of a candidate over the season, and why its best resistance differs from Vmp/Imp.
[[nodiscard]] Sentences season_sentences(const Candidate& candidate);

}  // namespace heatmatch
