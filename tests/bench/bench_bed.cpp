// Time of one bed by the closed form, of the power for a limit, of a whole answer, and of a day of
// changing power and air in shells and in a field.
#include <cmath>
#include <numbers>

#include <benchmark/benchmark.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/heat/bed_shells.hpp"
#include "heatmatch/heat/sheath_temperature.hpp"

namespace {

heatmatch::Store pot() {
    return {.medium = "dry-sand",
            .shape = heatmatch::StoreShape::cylinder,
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

/// 288 steps of five minutes: half a sine of ten hours, in air that changes too.
template <class Bed>
void one_day(Bed& bed) {
    constexpr int steps = 288;
    for (int step = 0; step < steps; ++step) {
        const double hours = (step + 0.5) / 12.0;
        const double share = std::sin(std::numbers::pi * hours / 10.0);
        bed.set_air_c(5.0 + 3.0 * std::sin(hours / 4.0));
        bed.step(hours < 10.0 ? 150.0 * share : 0.0, 300.0);
        benchmark::DoNotOptimize(bed.sheath_c());
    }
}

void bed_shells_day(benchmark::State& state) {
    const heatmatch::BedCharge charge = bed();
    heatmatch::BedShells shells(charge.fill, charge.shell, charge.legs, 5.0, 5.0);
    for (auto _ : state) one_day(shells);
}
BENCHMARK(bed_shells_day)->Unit(benchmark::kMillisecond);

void bed_field_day(benchmark::State& state) {
    const heatmatch::BedCharge charge = bed();
    heatmatch::BedField field(charge.fill, charge.shell, charge.legs, 5.0, 5.0);
    for (auto _ : state) one_day(field);
}
BENCHMARK(bed_field_day)->Unit(benchmark::kMillisecond);

}  // namespace
