#pragma once

#include <span>
#include <vector>

#include "heatmatch/heat/heat_day.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/parts/element.hpp"

namespace heatmatch {

/// Equal elements of one bank in a store.
struct BankInStore {
    Element element{};
    int elements = 1;
    double power_w = 0.0;  //!< into all of them [W]
    /// Its power over a clear day of each month; empty: this power during the hours of the charge.
    std::vector<HeatDay> days{};
    bool of_same_circuit = false;  //!< as the bank that is judged: both have power at once
};

/// The legs of several banks in one store, one layout for each bank, all positions from the axis of
/// the store. The elements are side by side in the order of the banks; the whole is centered, in
/// the narrowest arrangement that fits. Between elements of different banks the spacing is that
/// between elements. All legs are upright, or all are horizontal. One bank alone is laid out as by
/// leg_layout(). Legs that do not fit or that overlap are reported in `misfit` of every layout.
/// Throws InvalidInput as leg_layout() does, and without a bank.
[[nodiscard]] std::vector<LegLayout> joint_layout(std::span<const BankInStore> banks,
                                                  const Store& store);

}  // namespace heatmatch
