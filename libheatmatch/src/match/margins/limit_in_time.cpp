#include "heatmatch/match/margins/limit_in_time.hpp"

#include "sentences_of_limits.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/base/units.hpp"
#include "heatmatch/match/margins/floor_margin.hpp"
#include "heatmatch/match/margins/material_margins.hpp"
#include "heatmatch/match/margins/sensor_margins.hpp"

namespace heatmatch {

using margins_sentences::of_limits::say;

namespace {

constexpr double careful_tolerance_k = 10.0;  // of a tolerance that is not stated; from memory
constexpr double hottest_water_c = 93.0;      // highest set point for water; from memory
constexpr double water_boils_c = 100.0;
/// As in the margins of wall and lid.
constexpr double char_rise_k = 50.0;
constexpr double clear_mm = 900.0;
constexpr double burn_c = 65.0;

/// The temperatures at the end of one day of a stagnation, each at its worst end.
struct StagnantDay {
    double sheath_c = 0.0;
    double coil_c = 0.0;
    double outside_c = 0.0;  //!< hotter of wall and lid
    double floor_c = 0.0;    //!< base under the store
    double inner_c = 0.0;    //!< where the fill meets its vessel
    double water_c = 0.0;    //!< 0 in a bed
};

double mean_wall_c(const BedCharge& charge, double wall_c) {
    const double concentration = std::max(1.0, charge.wall_concentration.value_or(1.0));
    return charge.air_c + (wall_c - charge.air_c) / concentration;
}

/// Temperature of a sensor at that place of a bed; for bed and wall the bulk alone is faster.
double sensed_c(const BedCharge& charge, SensedPlace place, double power_w) {
    if (place == SensedPlace::bed) return bulk_only(charge, power_w).bed_mean_c;
    if (place == SensedPlace::lid) return sensed_lid_c(charge, power_w);
    const BulkTemperatures bulk = bulk_only(charge, power_w);
    if (charge.others.empty()) return mean_wall_c(charge, bulk.wall_c);
    const double edge_k = bulk.edge_c + zero_celsius_k;
    return charge.shell.side_surface_k(edge_k, charge.air_c + zero_celsius_k) - zero_celsius_k;
}

/// The coldest end of the sensed place after those days.
double sensed_of_bed_c(const BankHeat& heat, SensedPlace place, double power_w, int day) {
    double coldest_c = 1e9;
    for (BedCharge charge : {heat.stagnant, heat.stagnant_out}) {
        charge.days = day;
        coldest_c = std::min(coldest_c, sensed_c(charge, place, power_w));
    }
    return coldest_c;
}

StagnantDay day_of_bed(const BankHeat& heat, double power_w, int day) {
    StagnantDay found{};
    for (BedCharge charge : {heat.stagnant, heat.stagnant_out}) {
        charge.days = day;
        const BedTemperatures at = bed_temperatures(charge, power_w);
        found.sheath_c =
            std::max(found.sheath_c, charge.air_c + verdict_factor * (at.sheath_c - charge.air_c));
        found.outside_c = std::max({found.outside_c, at.wall_c, at.lid_c});
        found.floor_c = std::max(found.floor_c, at.floor_c);
        found.inner_c = std::max(found.inner_c, at.inner_c);
    }
    found.coil_c = found.sheath_c + coil_above_sheath_k(power_w / heat.heated_length_m);
    return found;
}

SheathTemperature water_after(const BankHeat& heat, double power_w, int day) {
    const FilledStore& filled = *heat.store;
    constexpr double most_w = 1e6;  // above it every liquid boils
    return sheath_temperature(filled.medium, filled.store, heat.element, heat.elements,
                              {.power_w = std::min(power_w, most_w),
                               .hours = filled.charge_hours,
                               .air_c = filled.hottest_air_c,
                               .days = static_cast<double>(day),
                               .others_w = std::min(filled.others_w(true), most_w)});
}

StagnantDay day_of_water(const BankHeat& heat, double power_w, int day) {
    const SheathTemperature at = water_after(heat, power_w, day);
    return {.sheath_c = at.sheath_verdict_c,
            .coil_c = at.coil_c.high_c,
            .outside_c = std::max(at.wall_c.high_c, at.lid_c.high_c),
            .floor_c = at.bed_mean_c.high_c,
            .inner_c = at.bed_mean_c.high_c,
            .water_c = at.bed_mean_c.high_c};
}

/// Part that has exceeded its limit; empty if none has.
Sentence passed(const BankHeat& heat, const StagnantDay& day, double opens_c) {
    const FilledStore& filled = *heat.store;
    if (!heat.sheath) return say<"limit.sheath_unknown">();
    if (day.sheath_c > heat.sheath->verdict_limit_c) return say<"limit.sheath">();
    // For an unknown alloy: makers do not combine a coil with a lower limit with that sheath; from
    // memory.
    const double coil_limit_c = heat.coil_limit_c.value_or(heat.sheath->hard_limit_c);
    if (day.coil_c > coil_limit_c) return say<"limit.coil">();
    constexpr double boiling_k = 0.1;
    // A limit that senses the water opens at its own temperature, whatever the temperature of that
    // day.
    if (heat.liquid && std::min(day.water_c, opens_c) > water_boils_c - boiling_k) {
        return say<"limit.water">();
    }
    const double inner_c = heat.liquid ? std::min(day.inner_c, opens_c) : day.inner_c;
    if (passes_material(filled.store, inner_c)) return say<"limit.material">();
    const double outside_c = heat.liquid ? std::min(day.outside_c, opens_c) : day.outside_c;
    const bool near = filled.store.combustible_distance_mm.value_or(0.0) < clear_mm;
    if (near && outside_c > std::min(wood_limit_c(filled), filled.air_c + char_rise_k)) {
        return say<"limit.wood">();
    }
    const double floor_c = heat.liquid ? std::min(day.floor_c, opens_c) : day.floor_c;
    if (may_char_below(filled.store) && floor_c > wood_limit_c(filled)) {
        return say<"limit.floor">();
    }
    return outside_c > burn_c ? say<"limit.touch">() : Sentence{};
}

constexpr auto last_day = static_cast<int>(stagnation_days);

}  // namespace

namespace {

/// Whether the limit acts in time in that heat.
LimitInTime in_time(const BankHeat& heat, const PlacedDevice& limit, double element_w) {
    const double power_w = element_w * heat.elements;
    const SensedPlace place = limit.device.senses.value_or(SensedPlace::wall);
    if (!limit.device.set_c) return {.acts = Answer::unknown, .first = say<"limit.no_set">()};
    const double opens_c =
        *limit.device.set_c + limit.device.set_tolerance_k.value_or(careful_tolerance_k);
    if (place == SensedPlace::space)
        return {.acts = Answer::unknown, .first = say<"limit.space">()};
    if (heat.liquid && place != SensedPlace::bed) return {.first = say<"limit.not_in_water">()};
    if (heat.liquid && *limit.device.set_c > hottest_water_c) {
        return {.first = say<"limit.water_set">(with<"most">(hottest_water_c, unit::celsius))};
    }
    const auto opened_by = [&](int day) {
        // In a liquid it senses the part that may become too hot: if that stays colder, so does the
        // rest.
        const double sensed_c = heat.liquid ? water_after(heat, power_w, day).bed_mean_c.high_c
                                            : sensed_of_bed_c(heat, place, power_w, day);
        return sensed_c >= opens_c;
    };
    const auto passed_by = [&](int day) {
        return passed(
            heat, heat.liquid ? day_of_water(heat, power_w, day) : day_of_bed(heat, power_w, day),
            opens_c);
    };
    // The store warms from day to day: the first day that reaches the set point, by bisection.
    if (!opened_by(last_day)) {
        Sentence first = passed_by(last_day);
        const bool called_for = !first.empty();
        return {.acts = called_for ? Answer::no : Answer::unknown,
                .called_for = called_for,
                .first = std::move(first)};
    }
    int before = 0;
    int day = last_day;
    while (day - before > 1) {
        const int middle = (before + day) / 2;
        (opened_by(middle) ? day : before) = middle;
    }
    Sentence first = passed_by(day);
    const Answer acts = first.empty() ? Answer::yes : Answer::no;
    return {.acts = acts, .day = day, .first = std::move(first)};
}

}  // namespace

// With less heat of other circuits, or none, the place it senses may stay colder than its set
// point.
LimitInTime limit_in_time(const Circuit& circuit, const PlacedDevice& limit, double element_w) {
    const BankHeat& heat = *circuit.heat;
    LimitInTime found = in_time(heat, limit, element_w);
    if (heat.store->other_circuits() == 0) return found;
    const auto keep_worse = [&](const BankHeat& other) {
        if (found.acts == Answer::no) return;
        LimitInTime less = in_time(other, limit, element_w);
        const bool worse =
            less.acts == Answer::no || (found.acts == Answer::yes && less.acts == Answer::unknown);
        if (worse) found = std::move(less);
    };
    constexpr double in_part = 0.5;
    keep_worse(heat.with_others_at(in_part));
    keep_worse(heat.without_others());
    return found;
}

bool limit_counts(const Circuit& circuit, double element_w, const OpeningSite& site) {
    if (!circuit.heat || !circuit.heat->known()) return false;
    if (unlimited_circuit(circuit) != nullptr) return false;
    return std::any_of(
        circuit.devices.begin(), circuit.devices.end(), [&](const PlacedDevice& placed) {
            return is_limit(placed) &&
                   opens(circuit, placed, Occasion::limit, site).answer == Answer::yes &&
                   limit_in_time(circuit, placed, element_w).acts == Answer::yes;
        });
}

const OtherBank* unlimited_circuit(const Circuit& circuit) {
    if (!circuit.heat || !circuit.heat->store) return nullptr;
    const std::vector<OtherBank>& others = circuit.heat->store->others;
    const auto found = std::find_if(others.begin(), others.end(), [](const OtherBank& other) {
        return !other.own && !other.limited;
    });
    return found == others.end() ? nullptr : &*found;
}

}  // namespace heatmatch
