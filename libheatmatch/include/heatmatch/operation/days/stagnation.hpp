#pragma once

#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// Highest temperatures of a store from which no heat is extracted.
struct Stagnation {
    int month = 0;               //!< month in which the fourteen days begin
    double delivered_kwh = 0.0;  //!< into the bank during these days
    DayRun run{};
    std::vector<PartPeak> peaks{};
    Sentences sentences{};
};

/// Fourteen days of clear sky at the time of year with the most energy for this circuit, the
/// breaking contacts welded closed, no heat extracted, the air around the store constantly as in
/// high summer, the fill at its low conductivity. The air at the panels is 10 °C, which is
/// conservative in summer. Throws InvalidInput as simulate_day() does, and where the site states no
/// latitude and tilt; Interrupted where the progress callback requests a stop.
[[nodiscard]] Stagnation simulate_stagnation(const Candidate& candidate,
                                             const Progress& progress = {});

/// The same for all circuits of one store, in the fourteen days with the most energy for all of
/// them together. Throws InvalidInput as simulate_circuits() does.
[[nodiscard]] std::vector<Stagnation> simulate_stagnations(std::span<const Candidate> circuits,
                                                           const Progress& progress = {});

}  // namespace heatmatch
