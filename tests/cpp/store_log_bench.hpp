#pragma once

#include "operation_bench.hpp"

#include <cmath>
#include <limits>
#include <random>
#include <string_view>

#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"

/// A log of two days of the demo's standing store, read every quarter of an hour by three probes:
/// two in the bed and one on the wall. Made with a finer field and shorter steps than a fit uses,
/// with the conductivity and loss that are asked for, and noise of `noise_k`.
inline heatmatch::StoreLog made_log(const heatmatch::Candidate& candidate, double k20_w_mk,
                                    double loss_factor, double noise_k, unsigned seed,
                                    std::size_t days = 2) {
    const heatmatch::BankHeat& heat = *candidate.circuit.heat;
    heatmatch::Medium medium = heat.store->medium;
    medium.k20_w_mk = k20_w_mk;
    heatmatch::Store store = heat.store->store;
    store.loss_factor = store.loss_factor.value_or(1.0) * loss_factor;
    heatmatch::BedField bed(
        heatmatch::bed_fill(medium, heatmatch::ConductivityEnd::typical),
        heatmatch::store_shell(store), heatmatch::leg_layout(heat.element, heat.elements, store),
        8.0, 8.0, {.across = 16, .high = 24, .longest_step_s = 225.0}, heat.likely.rod_j_m_k);
    heatmatch::StoreLog log;
    log.probes = {{.name = "beside the rods", .radius_m = 0.10, .height_m = 0.42},
                  {.name = "near the wall", .radius_m = 0.22, .height_m = 0.42},
                  {.name = "wall", .place = heatmatch::ProbePlace::wall}};
    log.temperature_c.resize(log.probes.size());
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0.0, noise_k);
    constexpr double step_h = 0.25;
    for (std::size_t row = 0; row <= days * 96; ++row) {
        const double hour = static_cast<double>(row) * step_h;
        const double of_day = std::fmod(hour, 24.0);
        const bool sun = row > 0 && of_day > 9.0 && of_day <= 15.0;
        const double power_w = sun ? 200.0 * std::sin((of_day - 8.0) / 8.0 * 3.14159265) : 0.0;
        log.hours.push_back(hour);
        log.power_w.push_back(power_w);
        log.air_c.push_back(8.0);
        if (row > 0) bed.step(power_w, step_h * 3600.0);
        log.temperature_c[0].push_back(bed.at_c(0.10, 0.42) + noise(random));
        log.temperature_c[1].push_back(bed.at_c(0.22, 0.42) + noise(random));
        log.temperature_c[2].push_back(bed.wall_mean_c() + noise(random));
    }
    return log;
}
