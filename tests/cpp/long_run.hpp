#pragma once

#include <cstdlib>

/// Whether `tests/run --long` asks for all cases of a test that draws them; the short run takes a
/// sample.
inline bool in_the_long_run() {
    return std::getenv("HEATMATCH_LONG_RUN") != nullptr;
}
