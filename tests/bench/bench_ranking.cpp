// Time of one ranking of the demo installation, everything included.
#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/rank.hpp"
#include "heatmatch/text/installation_json.hpp"

namespace {

void rank_demo(benchmark::State& state) {
    const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    const heatmatch::Installation installation =
        heatmatch::installation_from_json(heatmatch::demo_installation_json());
    std::size_t evaluated = 0;
    for (auto _ : state) {
        evaluated =
            heatmatch::rank(parts, installation, {.top = 20, .keep_rejected = 20}).evaluated;
    }
    state.counters["pairings"] = static_cast<double>(evaluated);
}
BENCHMARK(rank_demo)->Unit(benchmark::kMillisecond);

}  // namespace
