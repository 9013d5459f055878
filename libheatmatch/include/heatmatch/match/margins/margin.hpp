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

/// How bad it is, in the signal words of ANSI Z535.6 and ISO 3864-2. @cite ansi-z535
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
    Severity consequence = Severity::danger;  //!< severity once the limit is passed
    /// With each unstated fact at the careful end of its field; `not assessed` has its consequence.
    Severity worst_severity = Severity::danger;
    std::optional<double> value{};  //!< judged at its worst end
    std::optional<double> value_low{};
    std::optional<double> value_high{};
    std::optional<double> limit{};
    Unit unit{};
    std::optional<double> headroom{};  //!< 1 at rest, 0 at the limit: headroom_of()
    /// The same with unstated facts at careful ends. A margin may set it where a fact that it
    /// lacks has no field with one careful end for all: compare_with_careful() counts that too.
    std::optional<double> careful_headroom{};
    Sentence said{};  //!< sentence with {value}, {limit}, {low} and {high}
    std::string source{};
    std::vector<Assumption> assumed{};
    std::vector<std::string> missing{};  //!< fields that would be needed

    /// One plain sentence with the numbers.
    [[nodiscard]] std::string sentence(UnitSystem system = UnitSystem::si) const;
    /// The same as data, with the digits of SI units.
    [[nodiscard]] Sentence whole() const;
};

/// (limit - value)/(limit - rest) of a limit from above: 1 at rest, 0 at the limit. Where the limit
/// does not lie above rest, so that the fraction has no meaning: min(1, (limit - value) over the
/// larger of |limit| and 1) below the limit, and -1 from it on. Always finite, never larger for a
/// larger value; a value or limit that is no finite number has -1.
[[nodiscard]] double headroom_of(double value, double limit, double rest = 0.0);

/// With less headroom left a margin is a caution.
inline constexpr double near_limit = 0.1;

/// Fills severity and headroom from value, limit and rest (the value with nothing connected).
/// Passed limits get the consequence; less than a tenth of headroom left is a caution.
void grade(Margin& margin, double rest = 0.0);
/// The same for a limit from below (at least 1 Mohm), with the rest above it.
void grade_from_below(Margin& margin, double rest);

/// How bad a severity is: none 0 to danger 3; `not assessed` is as bad as its consequence.
[[nodiscard]] int badness(Severity severity, Severity consequence);

/// Puts beside what is likely what the same checks found with every unstated fact at its careful
/// end: `worst_severity` and `careful_headroom`. A danger that only an unstated fact keeps away is
/// a warning at best. Both lists name the same checks; one that only the second has is taken over.
void compare_with_careful(std::vector<Margin>& likely, std::vector<Margin> careful);

/// A margin that cannot be assessed, saying what is missing.
[[nodiscard]] Margin not_assessed(std::string name, std::string subject, Sentence why,
                                  std::vector<std::string> missing);

}  // namespace heatmatch
