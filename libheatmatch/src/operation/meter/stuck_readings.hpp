#pragma once

#include <cstddef>
#include <string_view>

#include "heatmatch/operation/meter/readings.hpp"

namespace heatmatch {

/// `3 values of bank_v left out`.
[[nodiscard]] Sentence counted(std::size_t count, std::string_view field, Sentence what);

/// Leaves out a thermocouple that shows one value while the drive of the circuit changes by half
/// its largest, and tells it.
void leave_out_stuck(Readings& readings);

}  // namespace heatmatch
