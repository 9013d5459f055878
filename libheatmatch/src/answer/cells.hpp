#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

/// Cells that several tables share.
namespace heatmatch {

/// A name or a word of data alone.
[[nodiscard]] Sentence name_cell(std::string_view name);
/// A severity as a reader sees it: without one, no finding.
[[nodiscard]] Sentence severity_cell(Severity severity);
/// A number with always so many digits after the point, its unit in the head.
[[nodiscard]] Amount number(double value, int decimals, const Unit& unit = unit::none);
[[nodiscard]] Sentence number_cell(double value, int decimals, const Unit& unit = unit::none);
/// The same with as many of them as fit its size.
[[nodiscard]] Amount fitted(double value, const Unit& unit);
[[nodiscard]] Sentence unit_cell(const Unit& unit);
[[nodiscard]] Sentence unknown_cell();
/// Whole degrees; unknown where there are none.
[[nodiscard]] Sentence degrees_cell(const std::optional<double>& celsius);
/// A share of 1 as a whole number of percent.
[[nodiscard]] Amount percent_number(double share);

/// The owned group in its hook-up, and the elements in theirs.
[[nodiscard]] Sentence panels_cell(const Circuit& circuit);
[[nodiscard]] Sentence elements_cell(const Circuit& circuit);

/// How much of a limit is left, at most all of it; nothing where that is not known.
[[nodiscard]] Sentence headroom_cell(const Margin& margin);
/// How near its nearest limit is; unknown where how hot the sheath gets is.
[[nodiscard]] Sentence headroom_left_cell(const Candidate& candidate);
/// What is to be bought; unknown where a price is.
[[nodiscard]] Sentence price_cell(const Candidate& candidate);

/// A month, 1 to 12.
[[nodiscard]] Sentence month_word(int month);

}  // namespace heatmatch
