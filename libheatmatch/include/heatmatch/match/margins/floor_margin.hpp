#pragma once

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// What wood beside or under a store stands for years: 77 °C, or 50 K over the air, which counts as
/// at least a room's, where that is less. Wood that is hot for years chars, and lights itself, from
/// there on; the source asks for a margin below it. The 50 K are what listings of heaters allow,
/// from memory. @cite babrauskas-2007
[[nodiscard]] double wood_limit_c(const FilledStore& store);

/// Whether what a store stands on may char: wood, what is under metal legs, and what is not told.
[[nodiscard]] bool may_char_below(const Store& store);

/// `floor` of the store: what it stands on at the hottest spot, in use; after a stagnation too hot
/// is a warning.
[[nodiscard]] Margin floor_margin(const Circuit& circuit, const HeatPoint& point);

}  // namespace heatmatch
