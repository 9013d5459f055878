// Microseconds per hot wire and per hot tail.
#include <limits>
#include <vector>

#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/heat/fin_chain.hpp"
#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/heat/wire_temperature.hpp"

namespace {

/// A wire of the starter with its insulation.
struct Bench {
    heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    const heatmatch::Wire& wire = heatmatch::find_wire(parts, "silicone-14-awg");
    const heatmatch::Insulation& insulation = heatmatch::find_insulation(parts, wire.insulation);
};

/// Temperature of a wire at the amperes of the argument, 40 °C around it.
void conductor_balance(benchmark::State& state, heatmatch::SurroundingsKind kind, double wind_m_s) {
    const Bench bench;
    const heatmatch::Surroundings around{.kind = kind, .air_c = 40.0, .wind_m_s = wind_m_s};
    const auto amperes = static_cast<double>(state.range(0));
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            conductor_temperature(bench.wire, &bench.insulation, amperes, around));
    }
}
BENCHMARK_CAPTURE(conductor_balance, still, heatmatch::SurroundingsKind::open_air, 0.0)
    ->Arg(4)
    ->Arg(8)
    ->Arg(20)
    ->Arg(50);
BENCHMARK_CAPTURE(conductor_balance, sunlit_wind, heatmatch::SurroundingsKind::sunlit, 2.0)
    ->Arg(8)
    ->Arg(50);
BENCHMARK_CAPTURE(conductor_balance, bed, heatmatch::SurroundingsKind::bed, 0.0)->Arg(8);

void ampacity_by_balance(benchmark::State& state) {
    const Bench bench;
    const auto around = heatmatch::Surroundings::open_air(40.0);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            ampacity_by_balance_a(bench.wire, &bench.insulation, 180.0, around));
    }
}
BENCHMARK(ampacity_by_balance);

void fin_chain(benchmark::State& state) {
    constexpr double endless = std::numeric_limits<double>::infinity();
    const std::vector<heatmatch::FinSegment> segments{{endless, 3.9e-4, 0.66, 150.0, 462.0},
                                                      {0.05, 5.8e-4, 0.66, 150.0},
                                                      {0.03, 5.8e-4, 0.35, 25.0},
                                                      {endless, 8.1e-4, 0.137, 25.0}};
    const std::vector<double> contact{0.0, 0.0, 0.5};
    for (auto _ : state) {
        benchmark::DoNotOptimize(heatmatch::FinChain(segments, contact).joint_c()[2]);
    }
}
BENCHMARK(fin_chain);

void hot_tail(benchmark::State& state) {
    const Bench bench;
    const heatmatch::HotTail tail{.sheath_c = 650.0,
                                  .bed_c = 200.0,
                                  .cold_length_m = 0.05,
                                  .place = static_cast<heatmatch::TerminalPlace>(state.range(0)),
                                  .contact_ohm = 0.005,
                                  .current_a = 8.0};
    for (auto _ : state) {
        benchmark::DoNotOptimize(tail_temperatures(tail, bench.wire, &bench.insulation));
    }
}
BENCHMARK(hot_tail)->Arg(0)->Arg(1)->Arg(2);

}  // namespace
