#pragma once

#include "demo.hpp"

#include <limits>

inline const heatmatch::Wire& silicone() {
    return heatmatch::find_wire(starter(), "silicone-14-awg");
}

/// Endless where the wire has no price.
inline double price_of_wire(const heatmatch::Wire& wire) {
    return wire.price.typical().value_or(std::numeric_limits<double>::infinity());
}
