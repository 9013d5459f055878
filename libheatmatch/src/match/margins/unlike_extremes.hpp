#pragma once

#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

/// Wire before a bank, and wire in series with each of its branches [ohm].
struct BankWire {
    double common_ohm = 0.0;
    double branch_ohm = 0.0;
};

/// The largest load on each element of an unlike bank: over all corners of the others' resistances,
/// and over its own band, sampled and then refined where its power is highest.
[[nodiscard]] Extremes unlike_extremes(const LoadedSource& source, const UnlikeBank& bank,
                                       BankWire wire);

}  // namespace heatmatch
