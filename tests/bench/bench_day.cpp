// Days of operation: goals are 50 ms a day at one-minute electrical and five-minute thermal steps,
// and 5 s for a winter of 120 days on one core.
#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/operation/days/day_answer.hpp"
#include "heatmatch/operation/days/stagnation.hpp"
#include "heatmatch/solar/monthly_weather.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"

namespace {

using namespace heatmatch;

Installation demo() {
    return installation_from_json(demo_installation_json());
}

Candidate standing() {
    return assess(Catalog::starter().parts(), demo());
}

const Weather& demo_year() {
    static const Weather year = weather_from_months(*demo().weather, demo().site);
    return year;
}

void run_days(benchmark::State& state, int month, int days) {
    const Candidate candidate = standing();
    const DayWeather weather = day_weather(demo_year(), {.month = month, .days = days});
    for (auto _ : state) {
        benchmark::DoNotOptimize(simulate_day(candidate, weather, {.warm_up_days = 0}));
    }
    state.counters["a_day"] =
        benchmark::Counter(static_cast<double>(days) * static_cast<double>(state.iterations()),
                           benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

void day_of_operation(benchmark::State& state) {
    run_days(state, 1, 1);
}
BENCHMARK(day_of_operation)->Unit(benchmark::kMillisecond);

void operation_winter_of_120_days(benchmark::State& state) {
    run_days(state, 11, 120);
}
BENCHMARK(operation_winter_of_120_days)->Unit(benchmark::kMillisecond);

void operation_stagnation(benchmark::State& state) {
    const Candidate candidate = standing();
    for (auto _ : state) benchmark::DoNotOptimize(simulate_stagnation(candidate));
}
BENCHMARK(operation_stagnation)->Unit(benchmark::kMillisecond);

void operation_day_answer(benchmark::State& state) {
    const Candidate candidate = standing();
    const DayRun run = simulate_day(candidate, demo_year(), {.span = {.month = 11, .days = 120}});
    for (auto _ : state) benchmark::DoNotOptimize(answer_of(candidate, run));
}
BENCHMARK(operation_day_answer)->Unit(benchmark::kMillisecond);

}  // namespace
