#pragma once

#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// Can this device open this circuit, here? Its direct volts and amperes have to suffice.
/// - By hand: operated by hand in a run that carries the whole circuit, it opens all conductors
///   that are not solidly grounded together; of a floating array the poles in one conductor break
///   the whole volts after an earth fault. Where no pair is printed for so few poles, volts share
///   out evenly over the poles of a pair (from memory). @cite nec-690-13
/// - Thermostat, limit: it senses, is set within what it is made for, and its own contacts or what
///   it drives open; a limit stays open and does not rely on a semiconductor, which fails shorted.
/// - Fault: a string fuse that the other strings can blow, or what a detector of faults drives.
///   A short of the panels themselves is hardly more than their working current.
[[nodiscard]] Opening opens(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                            const OpeningSite& site = {});

/// Whether it senses a temperature and stays open once it has opened.
[[nodiscard]] bool is_limit(const PlacedDevice& placed);

/// The device of a circuit that opens for a limit of it; null without one that surely does.
[[nodiscard]] const PlacedDevice* opening_limit(const Circuit& circuit,
                                                const OpeningSite& site = {});

}  // namespace heatmatch
