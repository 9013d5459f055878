#pragma once

#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The margins of a candidate, the most severe first; what is not assessed stands before what is
/// within its limit.
[[nodiscard]] std::vector<const Margin*> by_severity(const Candidate& candidate);

/// What a table of margins shows.
struct MarginsTableOptions {
    bool source = true;    //!< a column of where each limit comes from
    bool missing = false;  //!< behind each sentence what would have to be known
};

/// A row for each margin: severity, name, subject, headroom, sentence.
[[nodiscard]] Table margins_table(const Candidate& candidate,
                                  const MarginsTableOptions& options = {});
/// Its title where the order goes without saying.
[[nodiscard]] Sentence margins_plain_title();

/// The same as lines: those within their limits counted, and what one reason hides in one line;
/// with `everything` each of them told.
[[nodiscard]] Sentences margin_lines(const Candidate& candidate, bool everything = false);

/// Part or run of a margin and what it says, for a list of reasons.
[[nodiscard]] Sentence margin_reason(const Margin& margin);

}  // namespace heatmatch
