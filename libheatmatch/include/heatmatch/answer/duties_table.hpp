#pragma once

#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"

namespace heatmatch {

/// The duties of a candidate, with the controls of its catalog that would find a fault.
[[nodiscard]] std::vector<CodeDuty> duties_of(const Candidate& candidate);

/// A row for each duty of the code: whether it is due, from when on, what there is for it.
[[nodiscard]] Table duties_table(const Candidate& candidate);
/// Those that are due, or may be, as lines.
[[nodiscard]] Sentences duty_lines(const Candidate& candidate);
/// That duties decide nothing here, and who does.
[[nodiscard]] Sentence duties_legend();

/// How many are due, met by a device, stated, not met, stated by nobody.
[[nodiscard]] Sentence duties_sentence(const Candidate& candidate);
/// What they depend on: panels on a building or the ground, earth, wires inside, volts, code.
[[nodiscard]] Sentence scope_sentence(const Candidate& candidate);
/// Which of the steps of 30, 60 and 80 V the cold volts are past.
[[nodiscard]] Sentence steps_sentence(const Candidate& candidate);

}  // namespace heatmatch
