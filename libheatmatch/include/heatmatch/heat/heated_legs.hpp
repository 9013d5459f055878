#pragma once

#include <span>

#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// The legs of one bank, with their power.
struct HeatedLegs {
    LegLayout legs{};
    double power_w = 0.0;  //!< into all of them [W]

    /// Power per meter of heated length [W/m].
    [[nodiscard]] double w_per_m() const { return power_w / legs.heated_length_m(); }
};

/// Heat flux at the nearest spot of a round wall over the mean, of all banks together: as
/// LegLayout::wall_concentration(), each leg weighted by its share of the power.
[[nodiscard]] double joint_wall_concentration(std::span<const HeatedLegs> banks,
                                              const StoreShell& shell);

}  // namespace heatmatch
