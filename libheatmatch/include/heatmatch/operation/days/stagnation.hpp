#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// The hottest a store gets with nobody taking its heat.
struct Stagnation {
    int month = 0;        //!< in which its fortnight begins
    double in_kwh = 0.0;  //!< into the bank in these days
    DayRun run{};
    std::vector<PartPeak> peaks{};
    Sentences sentences{};
};

/// Fourteen days of cloudless sky at the time of the year that gives this circuit most, what breaks
/// the circuit welded shut, no heat taken, the air around the store as in high summer all the time,
/// the fill at its low conductivity. Cells stand in air of 10 °C, which is on the careful side in
/// summer. Throws InvalidInput as simulate_day() does, and where the site tells no latitude and
/// tilt; Interrupted where the progress callback asks to stop.
[[nodiscard]] Stagnation simulate_stagnation(const Candidate& candidate,
                                             const Progress& progress = {});

}  // namespace heatmatch
