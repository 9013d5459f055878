// Time, memory and result of the plan of the demo installation and of a yard of 12 panels of four
// kinds on two planes, ten owned elements of five kinds and every element of the starter for sale;
// beside it the best circuit alone, everything in one array, and the ranking, which a plan
// contains.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/plan/plan.hpp"
#include "heatmatch/match/plan/unlocks.hpp"
#include "heatmatch/match/rank/rank.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"

namespace {

const heatmatch::Parts& plan_parts() {
    static const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    return parts;
}

heatmatch::Installation demo_yard() {
    return heatmatch::installation_from_json(heatmatch::demo_installation_json());
}

heatmatch::Installation yard_of_twelve() {
    heatmatch::Installation yard = demo_yard();
    yard.circuit.reset();
    yard.panels = {
        {.group = "south five", .panel = "silicon-60-cell-245", .count = 5, .age_years = 12.0},
        {.group = "south three", .panel = "silicon-72-cell-300", .count = 3, .age_years = 8.0},
        {.group = "west two", .panel = "silicon-36-cell-135", .count = 2, .age_years = 10.0},
        {.group = "west thin", .panel = "cdte-100", .count = 2, .age_years = 9.0}};
    for (std::size_t group = 2; group < yard.panels.size(); ++group) {
        yard.panels[group].tilt_deg = 35.0;
        yard.panels[group].azimuth_deg = 240.0;
    }
    yard.elements = {{.element = "storage-rod-1000-240", .count = 3},
                     {.element = "tubular-1000-120", .count = 2},
                     {.element = "oven-bake-2000-240", .count = 2},
                     {.element = "range-coil-2100-240", .count = 2},
                     {.element = "dishwasher-loop-800-120", .count = 1},
                     {.any = heatmatch::ElementFilter{}, .count = 4}};
    yard.store->diameter_m = 1.1;
    yard.store->height_m = 1.0;
    yard.store->element_spacing_mm = 150.0;
    yard.goals.budget = 300.0;
    return yard;
}

double most_mib() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    constexpr double kib_per_mib = 1024.0;
    return static_cast<double>(used.ru_maxrss) / kib_per_mib;
}

void tell(benchmark::State& state, const heatmatch::Plan& plan) {
    const auto a_day = [&](double kwh) { return kwh / plan.days; };
    state.counters["kwh_a_day"] = plan.mean_kwh_per_day();
    state.counters["circuits"] = static_cast<double>(plan.circuits.size());
    state.counters["arrays"] = static_cast<double>(plan.arrays);
    state.counters["gap_pct"] = 100.0 * plan.gap();
    state.counters["panels_bound"] = a_day(plan.bounds.panels_kwh);
    state.counters["store_bound"] = a_day(plan.bounds.store_kwh);
    state.counters["bill_bound"] = a_day(plan.bounds.bill_kwh);
    state.counters["one_circuit"] = plan.single ? a_day(plan.single->objective()) : 0.0;
    state.counters["mib"] = most_mib();
}

void plan_demo(benchmark::State& state) {
    heatmatch::Plan plan;
    for (auto _ : state) plan = heatmatch::plan(plan_parts(), demo_yard());
    tell(state, plan);
}
BENCHMARK(plan_demo)->Unit(benchmark::kMillisecond)->UseRealTime()->MeasureProcessCPUTime();

void plan_twelve_panels(benchmark::State& state) {
    heatmatch::Plan plan;
    for (auto _ : state) plan = heatmatch::plan(plan_parts(), yard_of_twelve());
    tell(state, plan);
}
BENCHMARK(plan_twelve_panels)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

void rank_twelve_panels(benchmark::State& state) {
    heatmatch::Ranking ranking;
    for (auto _ : state) ranking = heatmatch::rank(plan_parts(), yard_of_twelve());
    state.counters["pairings"] = static_cast<double>(ranking.evaluated);
    state.counters["kwh_a_day"] =
        ranking.candidates.empty() ? 0.0 : ranking.candidates.front().season->mean_kwh_per_day();
}
BENCHMARK(rank_twelve_panels)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

template <heatmatch::Installation (*yard)()>
void unlocks_of(benchmark::State& state) {
    const heatmatch::Plan plan = heatmatch::plan(plan_parts(), yard());
    std::size_t found = 0;
    for (auto _ : state) found = heatmatch::unlocks(plan_parts(), yard(), plan).size();
    state.counters["unlocks"] = static_cast<double>(found);
    state.counters["mib"] = most_mib();
}
BENCHMARK(unlocks_of<demo_yard>)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);
BENCHMARK(unlocks_of<yard_of_twelve>)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);

}  // namespace
