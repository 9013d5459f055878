#pragma once

#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The margins of a candidate, the most severe first; margins not assessed come before those with
/// no finding.
[[nodiscard]] std::vector<const Margin*> by_severity(const Candidate& candidate);

/// What a table of margins shows.
struct MarginsTableOptions {
    bool source = true;    //!< with a column for the source of each limit
    bool missing = false;  //!< with the missing fields after each sentence
};

/// One row for each margin: severity, name, subject, headroom, sentence.
[[nodiscard]] Table margins_table(const Candidate& candidate,
                                  const MarginsTableOptions& options = {});
/// Title where the order is evident.
[[nodiscard]] Sentence margins_plain_title();

/// The same as lines: margins with no finding are counted, and those not assessed for one reason
/// share one line. With `everything`, each margin has its line.
[[nodiscard]] Sentences margin_lines(const Candidate& candidate, bool everything = false);

/// How many margins have no finding; empty if none has. They are folded under this line.
[[nodiscard]] Sentence no_finding_line(const Candidate& candidate);

/// Part or run of a margin and its sentence, for a list of reasons.
[[nodiscard]] Sentence margin_reason(const Margin& margin);

}  // namespace heatmatch
