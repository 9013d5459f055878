#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// Whether a device may stand in one string: in no run that carries several strings together.
[[nodiscard]] bool in_a_string(const Circuit& circuit, const PlacedDevice& placed);

/// Whether the other strings may drive current backwards through it: it opens or protects one of
/// several. In a run of all of them the bank, which gives no current back, is all that is behind.
[[nodiscard]] bool may_be_fed_backwards(const Circuit& circuit, const PlacedDevice& placed);

/// The rating of what protects one string each [A]: it stands in the string, opens by current,
/// clears the cold volts by a printed pair, and in either direction. Nothing where it protects
/// none. @cite iec-60269-6 @cite nec-690-9 @cite dc-breaker-polarity
[[nodiscard]] std::optional<double> string_protection_a(const Circuit& circuit,
                                                        const PlacedDevice& placed);

}  // namespace heatmatch
