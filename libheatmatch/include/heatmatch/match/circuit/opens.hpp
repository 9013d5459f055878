#pragma once

#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// Whether this device can open this circuit here. Its DC voltage and current ratings have to
/// suffice.
/// - By hand: a manually operated device, in a run with the whole current of the circuit, opens all
///   conductors that are not solidly grounded together. In a floating array the poles in one
///   conductor break the whole voltage after an earth fault. Where no pair is printed for so few
///   poles, the voltage is divided evenly over the poles of a pair (from memory). @cite nec-690-13
/// - Thermostat, limit: it senses a temperature, its set point is within its range, and its own
///   contacts or a driven device open. A limit stays open and does not rely on a semiconductor,
///   which fails shorted.
/// - Fault: a string fuse that the current of the other strings can blow, or a device driven by a
///   fault detector. The short-circuit current of the panels themselves is hardly above their
///   working current.
[[nodiscard]] Opening opens(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                            const OpeningSite& site = {});

/// Whether it senses a temperature and stays open after it has opened.
[[nodiscard]] bool is_limit(const PlacedDevice& placed);

/// The device of a circuit that opens it for an overtemperature limit; null if none certainly does.
[[nodiscard]] const PlacedDevice* opening_limit(const Circuit& circuit,
                                                const OpeningSite& site = {});

}  // namespace heatmatch
