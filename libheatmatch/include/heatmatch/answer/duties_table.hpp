#pragma once

#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"

namespace heatmatch {

/// The duties of a candidate, with the controls of its catalog that would detect a fault.
[[nodiscard]] std::vector<CodeDuty> duties_of(const Candidate& candidate);

/// One row for each duty of the code: whether it is due, from which voltage, and what fulfills it.
[[nodiscard]] Table duties_table(const Candidate& candidate);
/// Duties that are due, or may be due, as lines.
[[nodiscard]] Sentences duty_lines(const Candidate& candidate);
/// Note that duties change no rank or severity, and who decides.
[[nodiscard]] Sentence duties_legend();

/// Counts of duties: due, met by a device, stated, not met, not stated.
[[nodiscard]] Sentence duties_sentence(const Candidate& candidate);
/// Facts they depend on: panels on a building or the ground, earthing, wires inside, voltage, code.
[[nodiscard]] Sentence scope_sentence(const Candidate& candidate);
/// Which of the steps of 30, 60 and 80 V the cold voltage exceeds.
[[nodiscard]] Sentence steps_sentence(const Candidate& candidate);

}  // namespace heatmatch
