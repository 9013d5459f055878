// Time of one ranking of the demo installation, everything included; of the margins of heat of many
// candidates; and of the screen, with and without a store.
#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"
#include "heatmatch/match/rank/rank.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"

namespace {

const heatmatch::Parts& starter() {
    static const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    return parts;
}

heatmatch::Installation demo() {
    return heatmatch::installation_from_json(heatmatch::demo_installation_json());
}

void rank_demo(benchmark::State& state) {
    const heatmatch::Installation installation = demo();
    std::size_t evaluated = 0;
    for (auto _ : state) {
        evaluated =
            heatmatch::rank(starter(), installation, {.top = 20, .keep_rejected = 20}).evaluated;
    }
    state.counters["pairings"] = static_cast<double>(evaluated);
}
BENCHMARK(rank_demo)->Unit(benchmark::kMillisecond);

/// All margins of heat of 10,000 candidates: those the demo keeps, over and over; sentences with
/// them.
void thermal_margins_of_10000(benchmark::State& state) {
    const heatmatch::Installation installation = demo();
    const heatmatch::Ranking ranking = heatmatch::rank(starter(), installation);
    constexpr std::size_t candidates = 10000;
    for (auto _ : state) {
        for (std::size_t i = 0; i < candidates; ++i) {
            const heatmatch::Candidate& candidate =
                ranking.candidates[i % ranking.candidates.size()];
            const heatmatch::Circuit& circuit = candidate.circuit;
            const auto heat = heatmatch::heat_of(circuit, candidate.bright);
            benchmark::DoNotOptimize(heatmatch::sheath_margins(circuit, heat));
            benchmark::DoNotOptimize(
                heatmatch::tail_margins(circuit, candidate.site, candidate.bright, heat));
            benchmark::DoNotOptimize(heatmatch::store_margins(circuit, heat));
        }
    }
}
BENCHMARK(thermal_margins_of_10000)->Unit(benchmark::kMillisecond);

/// 4000 groups of panels with every element of the starter in banks of up to four, no wire; the
/// counter is the time of one pairing, the fits and energy curves of the panels included.
void screen(benchmark::State& state) {
    heatmatch::Installation installation = demo();
    installation.runs.clear();
    installation.devices.clear();
    installation.goals.budget.reset();
    installation.circuit.reset();
    if (state.range(0) == 0) installation.store.reset();
    installation.elements = {{.any = heatmatch::ElementFilter{}, .count = 4}};
    installation.panels.clear();
    for (int i = 0; i < 4000; ++i) {
        const auto& panel = starter().panels[static_cast<std::size_t>(i) % starter().panels.size()];
        installation.panels.push_back({.group = "group " + std::to_string(i),
                                       .panel = panel.id,
                                       .count = 10,
                                       .age_years = 0.005 * i});
    }
    std::size_t evaluated = 0;
    for (auto _ : state) {
        evaluated =
            heatmatch::rank(starter(), installation, {.top = 20, .keep_rejected = 20, .threads = 1})
                .evaluated;
    }
    state.counters["pairings"] = static_cast<double>(evaluated);
    state.counters["each"] = benchmark::Counter(
        static_cast<double>(evaluated),
        benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(screen)->ArgName("store")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

}  // namespace
