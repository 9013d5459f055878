#pragma once

#include <span>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/heat/joint_layout.hpp"

namespace heatmatch {

/// The days of all banks of a charge, one list of months each; an empty one means the largest
/// power during the hours of the charge.
struct ChargeDays {
    std::span<const HeatDay> own{};
    std::vector<std::span<const HeatDay>> others{};
    std::vector<bool> of_same_circuit{};  //!< others whose power is always that of the own bank
};

/// The moments of those days at which some leg may be hottest; empty where that is the one with
/// every bank at its largest power. The local heat of each bank follows the hours of its day:
/// `sum of share_k (S(a(t - t_k)) - S(a(t - t_k+1))) / S(a t_charge)`, S the spread of its legs
/// (line_spread.hpp) at the distances of the leg that is judged. Shares of the own bank are those
/// of its largest local heat, so that it is never judged below what it is alone; all are rounded
/// upwards to 0.02.
[[nodiscard]] std::vector<HeatMoment> charge_moments(const BedCharge& charge,
                                                     const ChargeDays& days);

}  // namespace heatmatch
