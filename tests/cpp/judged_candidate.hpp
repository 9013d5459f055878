#pragma once

#include <utility>
#include <vector>

#include "heatmatch/match/candidate/candidate.hpp"

/// A candidate of which only the margins are told.
inline heatmatch::Candidate with_margins(std::vector<heatmatch::Margin> margins) {
    heatmatch::Candidate candidate;
    candidate.made = heatmatch::LazyMargins(std::move(margins));
    return candidate;
}
