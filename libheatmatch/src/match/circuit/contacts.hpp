#pragma once

#include <string>

#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// What keeps the contacts of a device from breaking this circuit, whoever opens them; yes without
/// a reason where nothing does.
[[nodiscard]] Opening contacts(const Circuit& circuit, const PlacedDevice& placed,
                               Occasion occasion, const OpeningSite& site);

[[nodiscard]] Opening refused(Opening opening, Obstacle obstacle, Sentence why);
/// That field would tell.
[[nodiscard]] Opening not_told(Opening opening, std::string field, Sentence why);
[[nodiscard]] Opening granted(Opening opening, Sentence why);
/// It has to break more volts than it is rated for.
[[nodiscard]] Sentence too_few_volts(const Opening& load);

}  // namespace heatmatch
