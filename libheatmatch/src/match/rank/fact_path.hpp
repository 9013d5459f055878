#pragma once

#include <string>

#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// Where a missing fact of a margin is written: the path in the installation file, or the field of
/// a part of the catalog.
[[nodiscard]] Sentence fact_path(const Installation& place, const Candidate& candidate,
                                 const Margin& margin, const std::string& field);

}  // namespace heatmatch
