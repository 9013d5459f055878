#include "heatmatch/heat/sheath_temperature.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

void check_number(const std::string& field, double value, const Unit& unit, const Range& range,
                  const std::string& remedy) {
    if (std::isfinite(value) && range.holds(value)) return;
    throw InvalidInput({.part = "charge of the store",
                        .field = field,
                        .value = format_number(value) + ' ' + std::string(unit.symbol),
                        .allowed = range.text(unit),
                        .remedy = remedy});
}

void check_charge(const StoreCharge& charge) {
    check_number("power_w", charge.power_w, unit::watt, {.low = 0.0, .high = 1e6},
                 "give the power of the whole bank");
    check_number("hours", charge.hours, unit::hour, {.low = 0.0, .high = 24.0, .low_open = true},
                 "a day has at most 24; more days are counted by `days`");
    check_number("air_c", charge.air_c, unit::celsius, {.low = -60.0, .high = 80.0},
                 "give the air around the store in °C");
    check_number("days", charge.days, unit::none, {.low = 1.0, .high = 3660.0},
                 "at least one day charges it");
}

TemperatureBand band_of(const std::array<BedTemperatures, 3>& ends,
                        double BedTemperatures::*member) {
    const auto [low, high] = std::minmax({ends[0].*member, ends[1].*member, ends[2].*member});
    return {.low_c = low, .typical_c = ends[1].*member, .high_c = high};
}

TemperatureBand raised(const TemperatureBand& band, double kelvin) {
    return {band.low_c + kelvin, band.typical_c + kelvin, band.high_c + kelvin};
}

/// Water mixes itself: one temperature, until it boils.
SheathTemperature in_liquid(const Medium& medium, const Store& store, double w_per_m,
                            const StoreCharge& charge) {
    constexpr double boiling_c = 100.0;
    constexpr double convection_k = 10.0;
    constexpr double boiling_k = 25.0;
    const StoreShell shell = store_shell(store);
    const double air_k = charge.air_c + zero_celsius_k;
    const double capacity =
        medium.density_kg_m3 * HeatCapacity(medium.heat_capacity_j_kgk).at(air_k) * shell.volume_m3;
    double bulk_k = air_k;
    for (int step = 0; step < 20; ++step) {
        const double ua = shell.loss_w_k(bulk_k, air_k);
        const double tau = capacity / ua;
        const double before = charge.days > 1.0 ? std::expm1(-86400.0 * charge.days / tau) /
                                                      std::expm1(-86400.0 / tau)
                                                : 1.0;
        bulk_k = std::min(
            air_k - charge.power_w / ua * std::expm1(-charge.hours * 3600.0 / tau) * before,
            boiling_c + zero_celsius_k);
    }
    const double bulk_c = bulk_k - zero_celsius_k;
    const bool boils = bulk_c >= boiling_c;
    SheathTemperature result{.w_per_cm = w_per_m / 100.0, .assumed = shell.assumed};
    result.bed_mean_c = {bulk_c, bulk_c, bulk_c};
    const double film_k = boils ? boiling_k : convection_k;
    result.sheath_c = {bulk_c + convection_k, bulk_c + film_k, bulk_c + boiling_k};
    result.sheath_verdict_c = bulk_c + boiling_k;
    result.coil_c = raised(result.sheath_c, coil_above_sheath_k(w_per_m));
    const double wall_c = shell.side_surface_k(bulk_k, air_k) - zero_celsius_k;
    result.wall_c = {wall_c, wall_c, wall_c};
    const double lid_c = shell.lid_surface_k(bulk_k, air_k) - zero_celsius_k;
    result.lid_c = {lid_c, lid_c, lid_c};
    result.assumed.push_back(
        {"medium \"" + medium.id + '"', "sheath above the water", "10 to 25 K", "from memory"});
    if (boils) {
        result.warnings.emplace_back(
            "The water boils: it needs a vent or a relief valve, water to make up, and a limit "
            "that opens before. An element above the water line burns out within a minute.");
    }
    return result;
}

}  // namespace

BedCharge bed_charge(const Medium& medium, const Store& store, const Element& element, int elements,
                     const StoreCharge& charge, ConductivityEnd end) {
    if (medium.form == "liquid") {
        throw InvalidInput({.part = "medium \"" + medium.id + '"',
                            .field = "form",
                            .value = "liquid",
                            .allowed = "granular or solid",
                            .remedy = "a liquid mixes itself: sheath_temperature() has its rules"});
    }
    BedCharge bed{.fill = bed_fill(medium, end, charge.moist),
                  .shell = store_shell(store),
                  .legs = leg_layout(element, elements, store),
                  .air_c = charge.air_c,
                  .hours = charge.hours,
                  .days = charge.days};
    if (!bed.legs.misfit.empty()) {
        throw InvalidInput({.part = "element \"" + element.id + '"',
                            .field = "in the store",
                            .value = bed.legs.misfit,
                            .allowed = "such that they fit",
                            .remedy = "choose a larger vessel, another spacing, or more legs"});
    }
    // Metal and magnesia of an 8 mm rod, by area; from memory.
    constexpr double reference_radius_m = 0.004;
    const double size = bed.legs.sheath_radius_m / reference_radius_m;
    bed.rod_j_m_k *= size * size;
    return bed;
}

SheathTemperature sheath_temperature(const Medium& medium, const Store& store,
                                     const Element& element, int elements,
                                     const StoreCharge& charge) {
    check_charge(charge);
    if (medium.form == "liquid") {
        const LegLayout legs = leg_layout(element, elements, store);
        return in_liquid(medium, store, charge.power_w / legs.heated_length_m(), charge);
    }
    std::array<BedTemperatures, 3> ends;
    SheathTemperature result;
    double w_per_m = 0.0;
    for (const auto end : {ConductivityEnd::high, ConductivityEnd::typical, ConductivityEnd::low}) {
        const BedCharge bed = bed_charge(medium, store, element, elements, charge, end);
        const BedTemperatures at = bed_temperatures(bed, charge.power_w);
        w_per_m = charge.power_w / bed.legs.heated_length_m();
        if (end == ConductivityEnd::high) ends[0] = at;
        if (end == ConductivityEnd::typical) {
            ends[1] = at;
            for (const auto* assumed : {&bed.fill.assumed, &bed.shell.assumed, &bed.legs.assumed}) {
                result.assumed.insert(result.assumed.end(), assumed->begin(), assumed->end());
            }
        }
        if (end == ConductivityEnd::low) {
            ends[2] = at;
            result.assumed.insert(result.assumed.end(), bed.fill.assumed.begin(),
                                  bed.fill.assumed.end());
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
    return result;
}

}  // namespace heatmatch
