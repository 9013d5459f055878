#pragma once

#include <cstddef>
#include <string>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/solar/observed_weather.hpp"

namespace heatmatch {

/// `2020-06-01 13:00 UTC`.
[[nodiscard]] std::string utc_text(double unix_time_s);

/// Throws InvalidInput naming a field of weather.
[[noreturn]] void refuse_weather(std::string field, std::string value, std::string allowed,
                                 Sentence remedy);

/// Time steps of the rows.
struct TimeSteps {
    double step_s = 0.0;        //!< median difference
    std::size_t gaps = 0;       //!< differences above 1.5 steps
    double missing_s = 0.0;     //!< total duration of the gaps
    std::size_t shortened = 0;  //!< rows that end before a full step
};

/// Checks the observations: lengths, times, ranges. Throws InvalidInput naming row and time.
/// Returns how many small negative readings there are.
std::size_t check_observations(const Observations& observations);

/// Throws InvalidInput unless there are two rows or more, a minute to an hour apart.
[[nodiscard]] TimeSteps time_steps(const Observations& observations);

}  // namespace heatmatch
