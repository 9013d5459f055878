#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Temperatures of the store at the largest power of its elements; empty without a store, sizes or
/// lengths, or where the bank does not fit. Of an unlike bank the highest of any element.
[[nodiscard]] std::optional<HeatPoint> heat_of(const Circuit& circuit, const Extremes& extremes);

/// Margins of the elements in their store: whether they fit; sheath, coil, and sheath in settled
/// sand; the sheath after fourteen bright days without a thermostat. The fill has its low
/// conductivity, the rise is multiplied by 1.10. Unknown values are not assessed.
[[nodiscard]] std::vector<Margin> sheath_margins(const Circuit& circuit,
                                                 const std::optional<HeatPoint>& point,
                                                 const OpeningSite& site = {});

/// The last of these, which takes longest to compute, for screens that may omit it: a warning where
/// a limit counts (`limited`), otherwise a danger.
[[nodiscard]] Margin stagnation_margin(const Circuit& circuit, const HeatPoint& point,
                                       bool limited);
/// All the others.
[[nodiscard]] std::vector<Margin> sheath_margins_in_use(const Circuit& circuit,
                                                        const std::optional<HeatPoint>& point);

/// The sheath of the remaining branches after one has opened, all day, because that fault is not
/// noticed. A danger above the short-term limit of the sheath, a warning above its limit for years
/// of use. Unknown values are not assessed.
[[nodiscard]] Margin survivor_sheath_margin(const Circuit& circuit, const Extremes& extremes);

/// The bank in its store after one branch has opened; null without a store or with one branch.
[[nodiscard]] std::shared_ptr<const BankHeat> survivors_of(const Circuit& circuit);
/// Headroom of that margin at that power of each remaining element; empty where it is not known.
[[nodiscard]] std::optional<double> survivor_headroom(const BankHeat& left, double survivor_w);

}  // namespace heatmatch
