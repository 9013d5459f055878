// Time of one bed by the closed form, of the power for a limit, and of a whole answer.
#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/heat/sheath_temperature.hpp"

namespace {

heatmatch::Store pot() {
    return {.medium = "dry-sand",
            .shape = "cylinder",
            .diameter_m = 0.27,
            .height_m = 0.27,
            .wall_emissivity = 0.3,
            .top_u_w_m2k = 3.0,
            .bottom_u_w_m2k = 4.0};
}

heatmatch::Element hairpin() {
    return {.id = "hairpin",
            .sheath_diameter_mm = 8.0,
            .heated_length_mm = 440.0,
            .legs = 2,
            .leg_spacing_mm = 50.0};
}

const heatmatch::Parts& starter() {
    static const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    return parts;
}

heatmatch::BedCharge bed() {
    return heatmatch::bed_charge(heatmatch::find_medium(starter(), "dry-sand"), pot(), hairpin(), 1,
                                 {.power_w = 100.0}, heatmatch::ConductivityEnd::low);
}

void bed_closed_form(benchmark::State& state) {
    const heatmatch::BedCharge charge = bed();
    double power_w = 100.0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(power_w);
        benchmark::DoNotOptimize(heatmatch::bed_temperatures(charge, power_w));
    }
}
BENCHMARK(bed_closed_form)->Unit(benchmark::kMicrosecond);

void bed_largest_power(benchmark::State& state) {
    const heatmatch::BedCharge charge = bed();
    double limit_c = 540.0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(limit_c);
        benchmark::DoNotOptimize(heatmatch::largest_power_w(charge, limit_c));
    }
}
BENCHMARK(bed_largest_power)->Unit(benchmark::kMicrosecond);

void bed_sheath_temperature(benchmark::State& state) {
    const heatmatch::Medium& sand = heatmatch::find_medium(starter(), "dry-sand");
    const heatmatch::Store store = pot();
    const heatmatch::Element element = hairpin();
    double power_w = 100.0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(power_w);
        benchmark::DoNotOptimize(
            heatmatch::sheath_temperature(sand, store, element, 1, {.power_w = power_w}));
    }
}
BENCHMARK(bed_sheath_temperature)->Unit(benchmark::kMicrosecond);

}  // namespace
