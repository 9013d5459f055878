#pragma once

#include "explain_sentences.hpp"

#include <string>

#include "heatmatch/base/trace.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// Adds the element to the names of the steps from `first` on.
void name_element(Trace& trace, std::size_t first, const std::string& element);

/// The steps from nameplates to resistance: panel, cold voltage, element, bank and runs.
void explain_parts(Trace& trace, const Circuit& circuit);

/// Numbers in the steps of an explanation, with five digits by default.
namespace step {

inline constexpr int digits = 5;

[[nodiscard]] inline Amount in(const Unit& unit, double value, int shown_digits = digits) {
    return {value, unit, shown_digits};
}
[[nodiscard]] inline Amount plain(double value, int shown_digits = digits) {
    return in(unit::none, value, shown_digits);
}
/// A number whose unit is elsewhere in the sentence.
[[nodiscard]] inline Amount number(const Unit& unit, double value, int shown_digits = digits) {
    return {value, unit, shown_digits, Shown::number};
}
[[nodiscard]] inline Amount unit_of(const Unit& unit) {
    return {.unit = unit, .shown = Shown::unit};
}

[[nodiscard]] inline Sentence named(const std::string& name) {
    return name.empty() ? Sentence{} : sentence_of(Name{name});
}

[[nodiscard]] inline Sentence ratio(const Amount& above, const Amount& below) {
    return explain_sentences::say<"explain.ratio">(with<"above">(above), with<"below">(below));
}

}  // namespace step

}  // namespace heatmatch
