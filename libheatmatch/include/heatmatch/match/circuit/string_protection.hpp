#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// Whether a device may be in one string: in no run that has the current of several strings.
[[nodiscard]] bool in_a_string(const Circuit& circuit, const PlacedDevice& placed);

/// Whether the other strings can drive reverse current through it: it opens or protects one of
/// several. In a run of all strings only the bank is behind it, and that returns no current.
[[nodiscard]] bool may_be_fed_backwards(const Circuit& circuit, const PlacedDevice& placed);

/// Rating of the device that protects one string each [A]: it is in the string, opens by current,
/// and clears the cold voltage by a printed pair in either direction. Empty where it protects none.
/// @cite iec-60269-6 @cite nec-690-9 @cite dc-breaker-polarity
[[nodiscard]] std::optional<double> string_protection_a(const Circuit& circuit,
                                                        const PlacedDevice& placed);

/// Reverse current that the other strings can drive into one for hours, by the code's factor: of
/// all strings the worst, or of that string [A].
[[nodiscard]] double lasting_fed_a(const Circuit& circuit);
[[nodiscard]] double lasting_fed_a(const Circuit& circuit, std::size_t string);

}  // namespace heatmatch
