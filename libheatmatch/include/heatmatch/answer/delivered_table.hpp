#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Power of a candidate at each condition, one row each; the title gives the circuit and the mean.
[[nodiscard]] Table delivered_table(const Candidate& candidate);
/// Title on a page of that circuit alone.
[[nodiscard]] Sentence delivered_plain_title();

/// Identity of a candidate: its circuit, load resistance, Vmp/Imp of the label and cold voltage.
[[nodiscard]] Sentence circuit_sentence(const Candidate& candidate);

}  // namespace heatmatch
