#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/air.hpp"
#include "heatmatch/parts/class_defaults.hpp"

namespace heatmatch {

/// Severity, in the signal words of ANSI Z535.6 and ISO 3864-2. @cite ansi-z535
enum class Severity { none, caution, warning, danger, not_assessed };
inline constexpr auto severity_words =
    std::to_array<std::string_view>({"none", "caution", "warning", "danger", "not assessed"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Severity) {
    return severity_words;
}
[[nodiscard]] std::string_view severity_name(Severity severity);

/// A named check of one part or run against one limit.
struct Margin {
    std::string name{};     //!< `cold voltage`
    std::string subject{};  //!< the part or run
    Severity severity = Severity::not_assessed;
    Severity consequence = Severity::danger;  //!< severity beyond the limit
    /// Severity with each unstated fact at the careful end of its field; for `not assessed`, the
    /// consequence.
    Severity worst_severity = Severity::danger;
    std::optional<double> value{};  //!< worst end
    std::optional<double> value_low{};
    std::optional<double> value_high{};
    std::optional<double> limit{};
    Unit unit{};
    std::optional<double> headroom{};  //!< 1 at rest, 0 at the limit: headroom_of()
    /// The same with unstated facts at careful ends. A margin sets it itself where a missing fact
    /// has no field with a single careful end; compare_with_careful() includes that value.
    std::optional<double> careful_headroom{};
    Sentence said{};  //!< sentence with {value}, {limit}, {low} and {high}
    std::string source{};
    std::vector<Assumption> assumed{};
    std::vector<std::string> missing{};  //!< fields to state

    /// One plain sentence with the numbers.
    [[nodiscard]] std::string sentence(UnitSystem system = UnitSystem::si) const;
    /// The same as data, with the digits of SI units.
    [[nodiscard]] Sentence whole() const;
};

/// (limit - value)/(limit - rest) of an upper limit: 1 at rest, 0 at the limit. Where the limit is
/// not above rest, the fraction is meaningless; the result is then min(1, (limit - value) over the
/// larger of |limit| and 1) below the limit, and -1 from the limit on. Always finite, never larger
/// for a larger value; -1 for a value or limit that is not finite.
[[nodiscard]] double headroom_of(double value, double limit, double rest = 0.0);

/// A margin with less headroom is a caution.
inline constexpr double near_limit = 0.1;

/// Sets severity and headroom from value, limit and rest (the value with nothing connected). Beyond
/// the limit the severity is the consequence; with less than a tenth of headroom it is a caution.
void grade(Margin& margin, double rest = 0.0);
/// The same for a lower limit (at least 1 Mohm), with the rest above it.
void grade_from_below(Margin& margin, double rest);

/// Rank of a severity: none 0 to danger 3; `not assessed` counts as its consequence.
[[nodiscard]] int badness(Severity severity, Severity consequence);

/// Adds to the likely margins the results of the same checks with every unstated fact at its
/// careful end: `worst_severity` and `careful_headroom`. If only an unstated fact prevents a
/// danger, the margin is at least a warning. Both lists name the same checks; a check that only the
/// second list has is added.
void compare_with_careful(std::vector<Margin>& likely, std::vector<Margin> careful);

/// A margin that cannot be assessed, with the missing fields.
[[nodiscard]] Margin not_assessed(std::string name, std::string subject, Sentence why,
                                  std::vector<std::string> missing);

}  // namespace heatmatch
