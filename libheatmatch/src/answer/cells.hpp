#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"

/// Cells shared by several tables.
namespace heatmatch {

/// A name or a word of data alone.
[[nodiscard]] Sentence name_cell(std::string_view name);
/// The shown name of a margin, or of a reason for which a ranking rejects.
[[nodiscard]] Sentence margin_cell(std::string_view name);
/// A word of a choice, as it is shown.
[[nodiscard]] Sentence choice_cell(const auto& choice) {
    return name_cell(shown_choice(choice));
}
/// The name of a code's duty: the NEC has ground faults where the IEC has earth faults.
[[nodiscard]] Sentence duty_cell(const CodeDuty& duty);
/// A severity as shown: `none` as no finding.
[[nodiscard]] Sentence severity_cell(Severity severity);
/// A number with a fixed number of decimals; its unit is in the heading.
[[nodiscard]] Amount number(double value, int decimals, const Unit& unit = unit::none);
[[nodiscard]] Sentence number_cell(double value, int decimals, const Unit& unit = unit::none);
/// The same with as many decimals as its magnitude needs.
[[nodiscard]] Amount fitted(double value, const Unit& unit);
[[nodiscard]] Sentence unit_cell(const Unit& unit);
[[nodiscard]] Sentence unknown_cell();
/// Whole degrees; unknown if empty.
[[nodiscard]] Sentence degrees_cell(const std::optional<double>& celsius);
/// A share of 1 as a whole number of percent.
[[nodiscard]] Amount percent_number(double share);

/// The owned group with its hook-up, and the elements with theirs.
[[nodiscard]] Sentence panels_cell(const Circuit& circuit);
[[nodiscard]] Sentence elements_cell(const Circuit& circuit);

/// Remaining share of a limit, at most 1; empty where it is not known.
[[nodiscard]] Sentence headroom_cell(const Margin& margin);
/// Headroom of the nearest limit; unknown where the sheath temperature is.
[[nodiscard]] Sentence headroom_left_cell(const Candidate& candidate);
/// Purchase price; unknown where a price is.
[[nodiscard]] Sentence price_cell(const Candidate& candidate);

/// A month, 1 to 12.
[[nodiscard]] Sentence month_word(int month);

}  // namespace heatmatch
