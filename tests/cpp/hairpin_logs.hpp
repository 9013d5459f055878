#pragma once

#include "bed_3d.hpp"
#include "demo.hpp"
#include "store_log_bench.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <numbers>
#include <optional>
#include <random>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"

/// A random log of a store, computed by the solution in three dimensions, so that calibration is
/// tested on a log that its own model did not make. One, two or four hairpins are in 20 to 220 L of
/// dry sand for 36 hours of cloudy sun. Probes are where the model assumes a mean: at a spot of the
/// wall, and in the bed beside the row of legs or in line with it.
struct HairpinLog {
    heatmatch::Candidate
        candidate{};  //!< as described by its owner: sand of 0.27 W/mK, loss factor 1
    heatmatch::StoreLog log{};
    double k20_w_mk = 0.0;  //!< true value
    double loss_factor = 0.0;
    int hairpins = 1;
    int kind = 0;  //!< set of probes, see below
};

/// 0 sheath and wall; 1 sheath, bed and wall; 2 two in the bed and wall; 3 bed and wall; 4 sheath.
inline constexpr int hairpin_log_kinds = 5;

namespace hairpin_logs {

/// std::uniform_real_distribution gives other numbers with another standard library.
class Chance {
  public:
    explicit Chance(std::uint32_t seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_()) + 0.5) / 4294967296.0;
    }
    double normal() {
        return std::sqrt(-2.0 * std::log(between(0.0, 1.0))) *
               std::cos(2.0 * std::numbers::pi * between(0.0, 1.0));
    }

  private:
    std::mt19937 engine_;
};

inline std::shared_ptr<const heatmatch::BankHeat> heat_of(Chance& chance, int hairpins) {
    heatmatch::Installation installation = demo();
    heatmatch::Store& store = *installation.store;
    const double litres = 20.0 * std::exp(chance.between(0.0, std::log(11.0)));
    const double slender = chance.between(0.9, 1.6);
    const double diameter_m = std::cbrt(litres / 1000.0 / (std::numbers::pi / 4.0 * slender));
    const double height_m = slender * diameter_m;
    store = {.medium = "dry-sand",
             .shape = heatmatch::StoreShape::cylinder,
             .diameter_m = diameter_m,
             .height_m = height_m,
             .wall_emissivity = chance.between(0.3, 0.9),
             .top_u_w_m2k = 3.0,
             .bottom_u_w_m2k = 4.0,
             .moist = false};
    const double most_mm = 1000.0 * 0.7 * (0.5 * diameter_m - 0.04);
    store.element_spacing_mm = std::min(chance.between(40.0, 90.0), most_mm);
    heatmatch::Element element = heatmatch::find_element(starter(), "tubular-1000-120");
    element.legs = 2;
    // Every leg needs a cell centered on it, so more than two rows must be evenly spaced.
    element.leg_spacing_mm =
        hairpins > 2 ? *store.element_spacing_mm : std::min(chance.between(40.0, 90.0), most_mm);
    element.heated_length_mm = 2000.0 * height_m * chance.between(0.5, 0.85);
    element.sheath_diameter_mm = 8.0;
    return heatmatch::bank_heat(heatmatch::fill_store(starter(), installation), element, {}, {},
                                hairpins);
}

}  // namespace hairpin_logs

/// True values of a log where they are not random.
struct HairpinTruth {
    double k20_w_mk = 0.0;
    double loss_factor = 0.0;
};

inline HairpinLog hairpin_log(std::uint32_t seed, int kind,
                              std::optional<HairpinTruth> truly = std::nullopt) {
    hairpin_logs::Chance chance(seed);
    HairpinLog made{.hairpins = 1 << (seed % 3), .kind = kind};
    const auto heat = hairpin_logs::heat_of(chance, made.hairpins);
    made.candidate.circuit.heat = heat;
    made.k20_w_mk = chance.between(0.18, 0.40);
    made.loss_factor = chance.between(0.6, 1.6);
    if (truly) {
        made.k20_w_mk = truly->k20_w_mk;
        made.loss_factor = truly->loss_factor;
    }
    const double air_c = chance.between(-5.0, 25.0);
    heatmatch::Medium medium = heat->store->medium;
    medium.k20_w_mk = made.k20_w_mk;
    heatmatch::Store store = heat->store->store;
    store.loss_factor = made.loss_factor;
    const Bed3dStore truth{.fill = heatmatch::bed_fill(medium, heatmatch::ConductivityEnd::typical),
                           .shell = heatmatch::store_shell(store),
                           .legs = heatmatch::leg_layout(heat->element, heat->elements, store),
                           .air_c = air_c,
                           .start_c = air_c};
    const double peak_w = heatmatch::largest_power_w(
        {.fill = truth.fill, .shell = truth.shell, .legs = truth.legs, .air_c = air_c},
        air_c + chance.between(200.0, 650.0), 1.0);
    const double radius_m = truth.shell.radius_m;
    const double half_m = 0.5 * truth.shell.height_m;
    const double outer_m = truth.legs.outer_radius_m();
    // Cells at the wall have their centers within that radius.
    const auto in_bed = [&](double share) {
        return std::min(outer_m + 0.03 + share * (radius_m - outer_m - 0.03), 0.88 * radius_m);
    };
    const bool wall_spot = chance.between(0.0, 1.0) < 0.5;
    struct Place {
        bool on_x = true;
        double from_axis_m = 0.0;
    };
    std::vector<Place> places;
    heatmatch::StoreLog& log = made.log;
    const auto add_bed = [&](double low, double high) {
        places.push_back({chance.between(0.0, 1.0) < 0.5, in_bed(chance.between(low, high))});
        log.probes.push_back(
            {.name = "bed", .radius_m = places.back().from_axis_m, .height_m = half_m});
    };
    if (kind == 0 || kind == 1 || kind == 4) {
        log.probes.push_back({.name = "sheath", .place = heatmatch::ProbePlace::sheath});
    }
    if (kind == 1 || kind == 3) add_bed(0.0, 0.8);
    if (kind == 2) {
        add_bed(0.0, 0.3);
        add_bed(0.4, 0.8);
    }
    if (kind != 4) log.probes.push_back({.name = "wall", .place = heatmatch::ProbePlace::wall});
    log.temperature_c.resize(log.probes.size());
    const double noise_k = chance.between(0.2, 1.0);
    Bed3d bed(truth, {.near_m = 0.014,
                      .growth = 1.15,
                      .high_m = 0.025,
                      .first_step_s = 225.0,
                      .longest_step_s = 900.0});
    constexpr double step_h = 0.5;
    for (std::size_t row = 0; row <= 72; ++row) {
        const double hour = static_cast<double>(row) * step_h;
        const double of_day = std::fmod(hour, 24.0);
        const bool sun = row > 0 && of_day > 1.0 && of_day <= 9.0;
        const double clear = std::min(1.0, chance.between(0.3, 1.4));
        const double power_w =
            sun ? peak_w * clear * std::sin((of_day - 0.75) / 8.5 * std::numbers::pi) : 0.0;
        log.hours.push_back(hour);
        log.power_w.push_back(power_w);
        log.air_c.push_back(air_c);
        if (row > 0) bed.run(power_w, step_h * 3600.0);
        std::size_t place = 0;
        for (std::size_t i = 0; i < log.probes.size(); ++i) {
            double read_c = air_c;
            if (row == 0) {
                read_c = air_c;
            } else if (log.probes[i].place == heatmatch::ProbePlace::sheath) {
                read_c = bed.sheath_c();
            } else if (log.probes[i].place == heatmatch::ProbePlace::wall) {
                read_c = wall_spot ? bed.wall_c() : bed.wall_mean_c();
            } else {
                read_c = bed.probe_c(places[place].on_x, places[place].from_axis_m);
                ++place;
            }
            log.temperature_c[i].push_back(read_c + noise_k * chance.normal());
        }
    }
    return made;
}
