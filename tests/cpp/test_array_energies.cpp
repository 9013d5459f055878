#include "demo.hpp"
#include "long_run.hpp"
#include "match/plan/array_energies.hpp"
#include "match/plan/plan_answers.hpp"
#include "match/plan/plan_task.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"

namespace {

/// Groups with rear light, shaded substrings and planes of their own.
heatmatch::Installation uneven_yard() {
    heatmatch::Installation yard = demo();
    yard.circuit.reset();
    yard.panels = {
        {.group = "upright", .panel = "silicon-60-cell-245", .count = 2, .rear_blocked = false},
        {.group = "shaded", .panel = "silicon-60-cell-245", .count = 2, .rear_blocked = true}};
    yard.panels[0].tilt_deg = 80.0;
    yard.panels[0].azimuth_deg = 160.0;
    yard.panels[1].tilt_deg = 40.0;
    yard.panels[1].azimuth_deg = 200.0;
    yard.panels[1].shade_pct = {50.0};
    yard.panels[1].shaded_substrings = 1;
    yard.elements = {{.element = "storage-rod-1000-240", .count = 2}};
    return yard;
}

}  // namespace

// Source: the season of an assessment of the same circuit.
TEST_CASE("the search sums arrays of several groups as their season does") {
    heatmatch::RankOptions options;
    const auto task = heatmatch::PlanTask::make(starter(), uneven_yard(), options);
    // A few arrays show what sanitizers see.
    const int enough = in_a_slow_build() ? 1 : 1000;
    int compared = 0;
    for (std::size_t array = 0; array < task->family.arrays.size() && compared < enough; ++array) {
        if (task->energies->only_group(task->family.arrays[array])) continue;
        const heatmatch::ExistingCircuit circuit = task->circuit(array, 0);
        CAPTURE(circuit.array);
        const auto assessed = planned_candidates(*task, starter(), {circuit});
        REQUIRE(assessed.size() == 1);
        const heatmatch::Circuit wired = task->judge->wired(circuit);
        const double kwh =
            task->energies->season(array).kwh(task->bank(0).typical_ohm(), wired.wire_ohm());
        CHECK(kwh == doctest::Approx(assessed.front().objective()).epsilon(2e-3));
        ++compared;
    }
    CHECK(compared >= std::min(enough, 4));
}
