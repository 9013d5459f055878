#pragma once

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"

namespace heatmatch {

/// Temperatures of a bed at its three conductivities.
struct BedEnds {
    const BedTemperatures& low;
    const BedTemperatures& typical;
    const BedTemperatures& high;
    double ln_typical = 0.0;  //!< relative to the low one
    double ln_high = 0.0;

    /// Highest temperature of a place between the ends. A fill with a higher conductivity conducts
    /// more heat to a face and spreads it there: spots have a maximum in between, that of the
    /// parabola in ln k.
    [[nodiscard]] double hottest_c(double BedTemperatures::*place) const;
};

[[nodiscard]] BedEnds bed_ends(const BankHeat& heat, const BedTemperatures& low,
                               const BedTemperatures& typical, const BedTemperatures& high);

}  // namespace heatmatch
