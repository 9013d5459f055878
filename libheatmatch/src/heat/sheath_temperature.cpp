#include "heatmatch/heat/sheath_temperature.hpp"

#include "base/sentences.hpp"
#include "charge_moments.hpp"
#include "heat_input.hpp"
#include "rod_contact.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/mixed_bulk.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double boiling_c = 100.0;

void check_charge(const StoreCharge& charge) {
    require_number("charge of the store", "power_w", charge.power_w, unit::watt,
                   {.low = 0.0, .high = 1e6}, say<"heat.power_of_bank">);
    require_number("charge of the store", "others_w", charge.others_w, unit::watt,
                   {.low = 0.0, .high = 1e6}, say<"heat.power_of_bank">);
    require_number("charge of the store", "hours", charge.hours, unit::hour,
                   {.low = 0.0, .high = 24.0, .low_open = true},
                   [] { return say<"heat.day_has">(with<"hours">(24.0)); });
    require_number("charge of the store", "air_c", charge.air_c, unit::celsius,
                   {.low = -60.0, .high = 80.0}, say<"heat.give_air">);
    require_number("charge of the store", "days", charge.days, unit::none,
                   {.low = 1.0, .high = 3660.0}, say<"heat.one_day">);
}

TemperatureBand band_of(const std::array<BedTemperatures, 3>& ends,
                        double BedTemperatures::*member) {
    const auto [low, high] = std::minmax({ends[0].*member, ends[1].*member, ends[2].*member});
    return {.low_c = low, .typical_c = ends[1].*member, .high_c = high};
}

TemperatureBand raised(const TemperatureBand& band, double kelvin) {
    return {band.low_c + kelvin, band.typical_c + kelvin, band.high_c + kelvin};
}

void check_fit(const Element& element, const LegLayout& legs) {
    if (legs.misfit.empty()) return;
    throw InvalidInput({.part = "element \"" + element.id + '"',
                        .field = "in the store",
                        .value = legs.misfit.text(),
                        .allowed = "legs that fit into the store",
                        .remedy = say<"heat.larger_vessel">()});
}

void add_assumed(std::vector<Assumption>& to, const std::vector<Assumption>& more) {
    for (const Assumption& each : more) {
        if (std::find(to.begin(), to.end(), each) == to.end()) to.push_back(each);
    }
}

/// Free convection at the sheath until boiling transfers more heat.
SheathTemperature in_liquid(const Medium& medium, const Store& store, const LegLayout& legs,
                            const StoreCharge& charge) {
    check_fill(medium);
    const StoreShell shell = store_shell(store);
    const double air_k = charge.air_c + zero_celsius_k;
    const double bulk_c = charged_bulk_c(bed_fill(medium, ConductivityEnd::typical), shell,
                                         {.power_w = charge.power_w + charge.others_w,
                                          .hours = charge.hours,
                                          .days = charge.days,
                                          .air_c = charge.air_c});
    const double bulk_k = bulk_c + zero_celsius_k;
    const double w_per_m = charge.power_w / legs.heated_length_m();
    const double flux_w_m2 = w_per_m / (2.0 * pi * legs.sheath_radius_m);
    const auto sheath_c = [&](double film, double above_k) {
        return std::min(bulk_c + flux_w_m2 / film, boiling_c + above_k);
    };
    SheathTemperature result{.w_per_cm = w_per_m / 100.0, .assumed = shell.assumed};
    add_assumed(result.assumed, legs.assumed);
    result.bed_mean_c = {bulk_c, bulk_c, bulk_c};
    result.sheath_c = {sheath_c(1500.0, 10.0), sheath_c(1000.0, 15.0), sheath_c(700.0, 25.0)};
    result.sheath_verdict_c = result.sheath_c.high_c;
    result.coil_c = raised(result.sheath_c, coil_above_sheath_k(w_per_m));
    const double wall_c = shell.side_surface_k(bulk_k, air_k) - zero_celsius_k;
    result.wall_c = {wall_c, wall_c, wall_c};
    const double lid_c = shell.lid_surface_k(bulk_k, air_k) - zero_celsius_k;
    result.lid_c = {lid_c, lid_c, lid_c};
    result.assumed.push_back(
        {"medium \"" + medium.id + '"', "sheath to water",
         say<"heat.film_to_water">(with<"low">({700.0, unit::watt_per_m2_k, 3, Shown::number}),
                                   with<"high">(1500.0, unit::watt_per_m2_k),
                                   with<"least">({10.0, unit::kelvin, 3, Shown::number}),
                                   with<"most">(25.0, unit::kelvin)),
         from_memory()});
    if (bulk_c >= boiling_c) {
        result.warnings.push_back(say<"heat.water_boils">());
    }
    return result;
}

}  // namespace

BedCharge bed_charge(const Medium& medium, const Store& store, const Element& element, int elements,
                     const StoreCharge& charge, ConductivityEnd end) {
    const BankInStore alone{.element = element, .elements = elements};
    return joint_bed_charge(medium, store, {&alone, 1}, 0, charge, end);
}

BedCharge joint_bed_charge(const Medium& medium, const Store& store,
                           std::span<const BankInStore> banks, std::size_t judged,
                           const StoreCharge& charge, ConductivityEnd end) {
    if (medium.form == MediumForm::liquid) {
        throw InvalidInput({.part = "medium \"" + medium.id + '"',
                            .field = "form",
                            .value = "liquid",
                            .allowed = "granular or solid",
                            .remedy = say<"heat.liquid_mixes">()});
    }
    std::vector<LegLayout> layouts = joint_layout(banks, store);
    BedCharge bed{.fill = bed_fill(medium, end, charge.moist),
                  .shell = store_shell(store),
                  .legs = std::move(layouts.at(judged)),
                  .air_c = charge.air_c,
                  .hours = charge.hours,
                  .days = charge.days};
    ChargeDays days{.own = banks[judged].days};
    for (std::size_t i = 0; i < banks.size(); ++i) {
        if (i == judged) continue;
        const bool apart = !banks[i].of_same_circuit;
        bed.others.push_back(
            {.legs = std::move(layouts[i]),
             .power_w = banks[i].power_w,
             .day_share = apart ? share_of_hours(banks[i].days, charge.hours) : 1.0});
        days.others.emplace_back(banks[i].days);
        days.of_same_circuit.push_back(banks[i].of_same_circuit);
    }
    const Element& element = banks[judged].element;
    check_fit(element, bed.legs);
    const RodContact contact = rod_contact(medium, store, element, bed.legs.sheath_radius_m);
    bed.gap_m = contact.gap_m;
    add_assumed(bed.fill.assumed, contact.assumed);
    // Metal and magnesia of an 8 mm rod, by area; from memory.
    constexpr double reference_radius_m = 0.004;
    const double size = bed.legs.sheath_radius_m / reference_radius_m;
    bed.rod_j_m_k *= size * size;
    bed.moments = charge_moments(bed, days);
    return bed;
}

SheathTemperature sheath_temperature(const Medium& medium, const Store& store,
                                     const Element& element, int elements,
                                     const StoreCharge& charge) {
    check_charge(charge);
    if (medium.form == MediumForm::liquid) {
        const LegLayout legs = leg_layout(element, elements, store);
        check_fit(element, legs);
        return in_liquid(medium, store, legs, charge);
    }
    std::array<BedTemperatures, 3> ends;
    SheathTemperature result;
    double w_per_m = 0.0;
    for (const auto end : {ConductivityEnd::low, ConductivityEnd::typical, ConductivityEnd::high}) {
        const BedCharge bed = bed_charge(medium, store, element, elements, charge, end);
        const BedTemperatures at = bed_temperatures(bed, charge.power_w);
        w_per_m = charge.power_w / bed.legs.heated_length_m();
        ends[static_cast<std::size_t>(end)] = at;
        for (const auto* assumed : {&bed.fill.assumed, &bed.shell.assumed, &bed.legs.assumed}) {
            add_assumed(result.assumed, *assumed);
        }
    }
    result.sheath_c = band_of(ends, &BedTemperatures::sheath_c);
    result.bed_mean_c = band_of(ends, &BedTemperatures::bed_mean_c);
    result.wall_c = band_of(ends, &BedTemperatures::wall_c);
    result.lid_c = band_of(ends, &BedTemperatures::lid_c);
    result.coil_c = raised(result.sheath_c, coil_above_sheath_k(w_per_m));
    result.sheath_verdict_c =
        charge.air_c + verdict_factor * (result.sheath_c.high_c - charge.air_c);
    result.w_per_cm = w_per_m / 100.0;
    result.warnings = fill_warnings(medium);
    if (charge.moist && medium.moist_k_w_mk && result.sheath_c.high_c > boiling_c) {
        result.warnings.push_back(
            say<"heat.fill_dries">(with<"boiling">(boiling_c, unit::celsius)));
    }
    return result;
}

}  // namespace heatmatch
