// Nanoseconds per operating point and microseconds per fit. The peer beside us is the textbook way:
// Newton on the same equation until it no longer moves; whole arrays are measured in every build of
// the inner loops that this processor runs.
#include <cmath>
#include <random>
#include <vector>

#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

namespace {

using heatmatch::DiodeCurve;

struct Load {
    DiodeCurve curve{};
    double ohm = 0.0;
};

/// Random modules of the starter catalog at random suns, temperatures and loads.
std::vector<Load> random_loads(std::size_t count) {
    const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    std::vector<heatmatch::SingleDiode> diodes;
    for (const heatmatch::Panel& panel : parts.panels) {
        diodes.push_back(heatmatch::fit_single_diode(panel));
    }
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    std::vector<Load> loads;
    for (std::size_t i = 0; i < count; ++i) {
        const heatmatch::SingleDiode& diode = diodes[random() % diodes.size()];
        const DiodeCurve curve =
            diode.at(10.0 + 1190.0 * unit(random), -20.0 + 90.0 * unit(random));
        const double match = curve.open_circuit_voltage_v() / curve.short_circuit_current_a();
        loads.push_back({curve, match * std::pow(10.0, -1.0 + 2.0 * unit(random))});
    }
    return loads;
}

constexpr std::size_t points = 20000;

double newton_current(const DiodeCurve& curve, double ohm) {
    const double total = ohm + curve.series_resistance_ohm;
    const double i0 = std::exp(curve.ln_saturation_current);
    const double slope = curve.shunt_conductance_s + 1.0 / total;
    double x = std::min((curve.light_current_a + i0) / slope,
                        curve.ideality_v * std::log(1.0 + curve.light_current_a / i0));
    for (int step = 0; step < 30; ++step) {
        const double e = i0 * std::exp(x / curve.ideality_v);
        const double move =
            (curve.light_current_a + i0 - e - slope * x) / (e / curve.ideality_v + slope);
        x += move;
        if (std::fabs(move) < 1e-14 * std::fabs(x)) break;
    }
    return x / total;
}

void operating_point_householder(benchmark::State& state) {
    const std::vector<Load> loads = random_loads(points);
    for (auto _ : state) {
        double sum = 0.0;
        for (const Load& load : loads) sum += load.curve.into_resistance(load.ohm).power_w;
        benchmark::DoNotOptimize(sum);
    }
    state.counters["per_point"] = benchmark::Counter(
        static_cast<double>(points),
        benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(operating_point_householder);

void operating_point_newton(benchmark::State& state) {
    const std::vector<Load> loads = random_loads(points);
    for (auto _ : state) {
        double sum = 0.0;
        for (const Load& load : loads) {
            const double current = newton_current(load.curve, load.ohm);
            sum += current * current * load.ohm;
        }
        benchmark::DoNotOptimize(sum);
    }
    state.counters["per_point"] = benchmark::Counter(
        static_cast<double>(points),
        benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(operating_point_newton);

/// The same loads as arrays side by side.
struct LoadArrays {
    std::vector<double> light_current_a{};
    std::vector<double> ln_saturation_current{};
    std::vector<double> series_resistance_ohm{};
    std::vector<double> shunt_conductance_s{};
    std::vector<double> ideality_v{};
    std::vector<double> ohm{};

    explicit LoadArrays(const std::vector<Load>& loads) {
        for (const Load& load : loads) {
            light_current_a.push_back(load.curve.light_current_a);
            ln_saturation_current.push_back(load.curve.ln_saturation_current);
            series_resistance_ohm.push_back(load.curve.series_resistance_ohm);
            shunt_conductance_s.push_back(load.curve.shunt_conductance_s);
            ideality_v.push_back(load.curve.ideality_v);
            ohm.push_back(load.ohm);
        }
    }
    [[nodiscard]] heatmatch::DiodeCurves curves() const {
        return {.light_current_a = light_current_a,
                .ln_saturation_current = ln_saturation_current,
                .series_resistance_ohm = series_resistance_ohm,
                .shunt_conductance_s = shunt_conductance_s,
                .ideality_v = ideality_v};
    }
};

void operating_points_of_arrays(benchmark::State& state, heatmatch::VectorWidth width) {
    // The builds are listed from narrow to wide.
    if (width > heatmatch::widest_vectors()) {
        state.SkipWithError("this processor does not run that build");
        return;
    }
    const LoadArrays arrays(random_loads(points));
    std::vector<double> voltage_v(points);
    std::vector<double> current_a(points);
    for (auto _ : state) {
        heatmatch::operating_points(arrays.curves(), arrays.ohm, voltage_v, current_a, width);
        benchmark::DoNotOptimize(current_a.data());
        benchmark::ClobberMemory();
    }
    state.counters["per_point"] = benchmark::Counter(
        static_cast<double>(points),
        benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK_CAPTURE(operating_points_of_arrays, portable, heatmatch::VectorWidth::portable);
BENCHMARK_CAPTURE(operating_points_of_arrays, avx2, heatmatch::VectorWidth::avx2);
BENCHMARK_CAPTURE(operating_points_of_arrays, avx512, heatmatch::VectorWidth::avx512);

void datasheet_fit(benchmark::State& state) {
    const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    for (auto _ : state) {
        for (const heatmatch::Panel& panel : parts.panels) {
            benchmark::DoNotOptimize(heatmatch::fit_single_diode(panel));
        }
    }
    state.counters["per_fit"] = benchmark::Counter(
        static_cast<double>(parts.panels.size()),
        benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(datasheet_fit)->Unit(benchmark::kMicrosecond);

}  // namespace
