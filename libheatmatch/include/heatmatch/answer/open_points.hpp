#pragma once

#include <string_view>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The mark of a severity beside its word, in text and pages: it survives black and white.
/// @cite ansi-z535
[[nodiscard]] std::string_view severity_mark(Severity severity);
/// Mark and word.
[[nodiscard]] Sentence marked_severity(Severity severity);

/// Something that must be there, stated and assessed before a circuit may be built.
struct OpenPoint {
    Severity severity = Severity::danger;
    Sentence said{};

    friend bool operator==(const OpenPoint&, const OpenPoint&) = default;
};

/// Dangers first, then the fact that decides about a worst-case danger, then limit and pressure at
/// any voltage, and above the touch voltage disconnect, bonding and earth fault. Where any is open,
/// wiring list and drawing are marked "not for building".
[[nodiscard]] std::vector<OpenPoint> open_points(const Candidate& candidate);
[[nodiscard]] bool is_for_building(const Candidate& candidate);
/// That mark, in words; empty for a candidate without an open point.
[[nodiscard]] Sentence building_mark(const Candidate& candidate);

}  // namespace heatmatch
