#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Total with its band beside the budget; where it is not known, what is missing.
[[nodiscard]] Sentence bill_sentence(const Bill& bill);
/// One row for each line of a bill.
[[nodiscard]] Table bill_table(const Bill& bill);
/// The same as lines.
[[nodiscard]] Sentences bill_lines(const Bill& bill);
/// What is not on the bill of a candidate: listed devices that can do nothing here, and devices for
/// code requirements.
[[nodiscard]] Sentences bill_remarks(const Candidate& candidate);

}  // namespace heatmatch
