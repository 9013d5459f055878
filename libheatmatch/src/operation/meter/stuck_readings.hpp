#pragma once

#include <cstddef>
#include <string_view>

#include "heatmatch/operation/meter/readings.hpp"

namespace heatmatch {

/// `3 values of bank_v omitted`.
[[nodiscard]] Sentence counted(std::size_t count, std::string_view field, Sentence what);

/// Removes readings of a thermocouple that is constant while the power of the circuit changes by
/// half of its maximum, and reports it.
void leave_out_stuck(Readings& readings);

}  // namespace heatmatch
