#pragma once

#include <cstdlib>

/// Whether `tests/run --long` asks for all cases of a test that draws them; the short run takes a
/// sample.
inline bool in_the_long_run() {
    return std::getenv("HEATMATCH_LONG_RUN") != nullptr;
}

/// Whether sanitizers watch: what a test draws is tried whole elsewhere, a few show what they see.
inline bool in_a_slow_build() {
    return std::getenv("HEATMATCH_SLOW_BUILD") != nullptr;
}
