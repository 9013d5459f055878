#pragma once

#include <span>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The circuits of one installation, one row each, as ranking_table() shows candidates, by their
/// names; a last row has the heat and the purchase price of all.
[[nodiscard]] Table circuits_table(std::span<const Candidate* const> circuits);

}  // namespace heatmatch
