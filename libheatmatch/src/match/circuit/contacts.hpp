#pragma once

#include <string>

#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// Why the contacts of a device cannot break this circuit, however they are operated; yes without a
/// reason if they can.
[[nodiscard]] Opening contacts(const Circuit& circuit, const PlacedDevice& placed,
                               Occasion occasion, const OpeningSite& site);

[[nodiscard]] Opening refused(Opening opening, Obstacle obstacle, Sentence why);
/// That field is to be stated.
[[nodiscard]] Opening not_told(Opening opening, std::string field, Sentence why);
[[nodiscard]] Opening granted(Opening opening, Sentence why);
/// It has to break a voltage above its rating.
[[nodiscard]] Sentence too_few_volts(const Opening& load);

}  // namespace heatmatch
