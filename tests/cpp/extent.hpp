#pragma once

#include <algorithm>
#include <limits>

/// From the lowest to the highest of some values.
struct Extent {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();

    void add(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    [[nodiscard]] bool holds(double value) const { return value >= low && value <= high; }
    [[nodiscard]] bool meets(const Extent& other) const {
        return low <= other.high && other.low <= high;
    }
};
