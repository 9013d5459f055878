#pragma once

#include <optional>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The reading of a thermocouple on the sheath to stop at [°C]: the least of the limits that its
/// margins are judged at (sheath, fill, and coil by what it is hotter), less what an ordinary
/// thermocouple errs by, the larger of 2.5 K and 0.75 % (from memory). Nothing where the limit of
/// the sheath is not known.
[[nodiscard]] std::optional<double> first_fire_stop_c(const Candidate& candidate);

/// A first fire with a thermocouple on the sheath, for a log that tells conductivity and loss: what
/// to log and when to stop, one sentence each. Numbers are those of the candidate's margins; what
/// they do not know is said to be not assessed. Throws InvalidInput without a described store, and
/// for a liquid.
[[nodiscard]] Sentences first_fire(const Candidate& candidate);

}  // namespace heatmatch
