#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What a candidate delivers at each condition, a row each; its title is the circuit and its mean.
[[nodiscard]] Table delivered_table(const Candidate& candidate);
/// Its title on a page of that circuit alone.
[[nodiscard]] Sentence delivered_plain_title();

/// What a candidate is: its circuit, its ohms, those of the label, its cold volts.
[[nodiscard]] Sentence circuit_sentence(const Candidate& candidate);

}  // namespace heatmatch
