#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// How hot the bank makes its store at the largest power of its elements; nothing without a store,
/// sizes or lengths, or where it does not fit.
[[nodiscard]] std::optional<HeatPoint> heat_of(const Circuit& circuit, const Extremes& extremes);

/// Margins of the elements in their store: whether they fit; sheath, coil, sheath in settled sand;
/// the sheath after fourteen bright days without a thermostat. The fill at its low conductivity,
/// the rise times 1.10. What is not known is not assessed.
[[nodiscard]] std::vector<Margin> sheath_margins(const Circuit& circuit,
                                                 const std::optional<HeatPoint>& point,
                                                 const OpeningSite& site = {});

/// The last of them, which costs days to tell, where a screen may do without: a warning where a
/// limit counts (`limited`), else a danger.
[[nodiscard]] Margin stagnation_margin(const Circuit& circuit, const HeatPoint& point,
                                       bool limited);
/// All the others.
[[nodiscard]] std::vector<Margin> sheath_margins_in_use(const Circuit& circuit,
                                                        const std::optional<HeatPoint>& point);

/// The sheath of what is left after one parallel branch has opened, all day: nobody sees that
/// fault. A danger above what the sheath lasts at all, a warning above what it lasts for years.
/// What is not known is not assessed.
[[nodiscard]] Margin survivor_sheath_margin(const Circuit& circuit, const Extremes& extremes);

/// The bank in its store once one branch has opened; null without a store or with one branch.
[[nodiscard]] std::shared_ptr<const BankHeat> survivors_of(const Circuit& circuit);
/// Headroom of that margin, of what is left with so many watts in each; nothing where it is not
/// known.
[[nodiscard]] std::optional<double> survivor_headroom(const BankHeat& left, double survivor_w);

}  // namespace heatmatch
