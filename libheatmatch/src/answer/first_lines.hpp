#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

/// Lines of the first screen.
namespace heatmatch {

/// The elements behind the panels, with resistance and Vmp/Imp.
[[nodiscard]] Sentence into_line(const Circuit& circuit);
/// Heat a day with its band and the darkest month, and what it is for the space.
[[nodiscard]] Sentences heat_lines(const Candidate& candidate);
/// The whole bill beside the budget, and what is to buy, the dearest first.
[[nodiscard]] Sentence bill_line(const Bill& bill);
/// The nearest limit, and the voltage at the record low.
[[nodiscard]] Sentences limit_lines(const Candidate& candidate);
[[nodiscard]] Sentence checks_line(const Candidate& candidate);
/// Panels and elements in one cell; `rated`: with the watts of an element.
[[nodiscard]] Sentence short_circuit(const Circuit& circuit, bool rated = false);

}  // namespace heatmatch
