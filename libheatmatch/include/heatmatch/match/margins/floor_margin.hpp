#pragma once

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Temperature that wood beside or under a store withstands for years: 77 °C, or 50 K above the air
/// if that is less; the air counts as at least room temperature. Wood that is hotter for years
/// chars and can self-ignite; the source requires a margin below that temperature. 50 K is the
/// limit in listings of heaters, from memory. @cite babrauskas-2007
[[nodiscard]] double wood_limit_c(const FilledStore& store);

/// Whether the base of a store can char: wood, a base under metal legs, or one that is not stated.
[[nodiscard]] bool may_char_below(const Store& store);

/// Margin `floor` of the store: the hottest spot of its base in use. Above the limit only after a
/// stagnation is a warning.
[[nodiscard]] Margin floor_margin(const Circuit& circuit, const HeatPoint& point);

}  // namespace heatmatch
