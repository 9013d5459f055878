#pragma once

#include <optional>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Thermocouple reading on the sheath at which to stop [°C]: where the first limit of sheath, coil,
/// fill or a spot of settled sand is reached, minus the error of an ordinary thermocouple, the
/// larger of 2.5 K and 0.75 % (from memory). Empty while the limit of sheath, coil or fill is not
/// known: it could be the lowest.
[[nodiscard]] std::optional<double> first_fire_stop_c(const Candidate& candidate);

/// First firing with a thermocouple on the sheath, for a log from which conductivity and loss are
/// fitted: what to log and when to stop, one sentence each. Numbers come from the candidate's
/// margins; an unknown one is reported as not assessed. Throws InvalidInput without a described
/// store, and for a liquid.
[[nodiscard]] Sentences first_fire(const Candidate& candidate);

}  // namespace heatmatch
