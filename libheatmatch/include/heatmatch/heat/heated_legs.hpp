#pragma once

#include <span>

#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// The legs of one bank, with their power.
struct HeatedLegs {
    LegLayout legs{};
    double power_w = 0.0;  //!< into all of them [W]
    /// Heat of a day over that of this power during the hours of the charge; at most 1.
    double day_share = 1.0;

    /// Power during the hours of the charge with the heat of the day [W].
    [[nodiscard]] double mean_w() const { return power_w * day_share; }
    /// Power per meter of heated length [W/m].
    [[nodiscard]] double w_per_m() const { return power_w / legs.heated_length_m(); }
};

/// Heat flux at the nearest spot of a round wall over the mean, of all banks together: as
/// LegLayout::wall_concentration(), each leg weighted by its share of the power.
[[nodiscard]] double joint_wall_concentration(std::span<const HeatedLegs> banks,
                                              const StoreShell& shell);

}  // namespace heatmatch
