#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// Temperature limit of the insulation of a run in its place.
struct InsulationLimit {
    double limit_c = 0.0;  //!< for the verdict [°C]
    bool soaked = false;   //!< the limit for wet places
    /// Its wet limit, for insulation dried by its element: a caution above it [°C].
    std::optional<double> wet_c{};
    bool wet_unknown = false;  //!< the place is wet and its limit there is not stated: at most
                               //!< `limit_c`
};

/// By the place, whatever the air: wire in hot air is cold and wet at night. Only insulation rated
/// for the temperature at which water evaporates counts as dry at an element, because it dries when
/// it reaches that temperature. The run needs insulation.
[[nodiscard]] InsulationLimit insulation_limit(const Circuit& circuit, const RunParts& run,
                                               const Site& site);

}  // namespace heatmatch
