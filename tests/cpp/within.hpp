#pragma once

#include <cmath>

#include <doctest/doctest.h>

/// Whether a value lies within a share of the expected one; prints both if not. doctest's Approx
/// allows that share of 1 + the value: for values below 1 it hardly checks.
inline bool within(double value, double expected, double share) {
    const bool found = std::fabs(value - expected) <= share * std::fabs(expected);
    if (!found) MESSAGE("value ", value, ", expected ", expected, " within ", 100.0 * share, " %");
    return found;
}

/// The same with an absolute difference.
inline bool within_abs(double value, double expected, double difference) {
    const bool found = std::fabs(value - expected) <= difference;
    if (!found) MESSAGE("value ", value, ", expected ", expected, " within ", difference);
    return found;
}
