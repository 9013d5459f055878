#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// What the insulation of a run may reach in its place.
struct InsulationLimit {
    double limit_c = 0.0;  //!< that it is judged by [°C]
    bool soaked = false;   //!< it is that of wet places
    /// What it stands where wet, of one that its element dries: a caution beyond it [°C].
    std::optional<double> wet_c{};
    bool wet_unknown = false;  //!< the place is wet and nobody states what it stands there: less
                               //!< than `limit_c`, or no more
};

/// By the place, whatever the air: wire in hot air is cold and wet at night. Only what is rated as
/// hot as where water leaves it counts as dry at an element, for it dries as it gets so hot. The
/// run needs insulation.
[[nodiscard]] InsulationLimit insulation_limit(const Circuit& circuit, const RunParts& run,
                                               const Site& site);

}  // namespace heatmatch
