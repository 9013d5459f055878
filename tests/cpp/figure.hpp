#pragma once

#include <cstdlib>
#include <iostream>

/// Prints a figure that tests/README.md quotes, where HEATMATCH_FIGURES is set. A test judges by
/// its checks; what has none is a study (study_*.cpp).
template <typename... Parts>
void figure(const Parts&... parts) {
    if (std::getenv("HEATMATCH_FIGURES") == nullptr) return;
    (std::cout << ... << parts) << '\n';
}
