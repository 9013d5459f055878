#pragma once

#include "state.hpp"

#include <memory>

#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch::python {

/// Simulated days with their candidate, for margins and pickles.
struct LivedDays {
    Candidate candidate{};
    DayRun run{};
    DayAnswer answer{};
};

[[nodiscard]] py::tuple state_of(const LivedDays& lived);
[[nodiscard]] std::shared_ptr<LivedDays> lived_days_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const PartPeak& peak);
[[nodiscard]] PartPeak part_peak_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const DayAnswer& answer);
[[nodiscard]] DayAnswer day_answer_from(const py::tuple& state);

/// A run with its circuit and its results.
inline std::shared_ptr<LivedDays> lived_days(const Candidate& candidate, DayRun run) {
    auto lived = std::make_shared<LivedDays>();
    lived->candidate = candidate;
    lived->run = std::move(run);
    lived->answer = answer_of(candidate, lived->run);
    return lived;
}

inline std::vector<Candidate> copies_of(const std::vector<const Candidate*>& circuits) {
    std::vector<Candidate> copies;
    for (const Candidate* circuit : circuits) copies.push_back(*circuit);
    return copies;
}

}  // namespace heatmatch::python
