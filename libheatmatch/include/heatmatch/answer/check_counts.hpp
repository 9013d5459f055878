#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// How many checks of a candidate were made, and what they found.
struct CheckCounts {
    int made = 0;
    int not_made = 0;  //!< a fact that they need is not stated
    int dangers = 0;
    int warnings = 0;
    int cautions = 0;
    int no_finding = 0;

    friend bool operator==(const CheckCounts&, const CheckCounts&) = default;
};
[[nodiscard]] CheckCounts check_counts(const Candidate& candidate);

/// A check by its name and what it looks at.
struct CheckName {
    std::string name{};
    std::string subject{};

    friend bool operator==(const CheckName&, const CheckName&) = default;
};

/// Checks that lack the same facts.
struct NotChecked {
    std::vector<std::string> missing{};  //!< fields to state; empty where no field covers it
    std::vector<CheckName> checks{};
    bool judged = false;  //!< assessed without them: at the usual value and at the worst case

    friend bool operator==(const NotChecked&, const NotChecked&) = default;
};
/// All of them. Checks not made come first; within each kind, the fact that most checks lack first.
[[nodiscard]] std::vector<NotChecked> not_checked(const Candidate& candidate);

/// The counts, warnings by name.
[[nodiscard]] Sentence counts_sentence(const Candidate& candidate);
/// Lines directly under the counts: one for each missing fact, the duties of the code that are not
/// stated, and what no field covers.
[[nodiscard]] Sentences not_checked_lines(const Candidate& candidate);

}  // namespace heatmatch
