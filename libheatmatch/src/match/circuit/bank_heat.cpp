#include "heatmatch/match/circuit/bank_heat.hpp"

#include "bed_ends.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace heatmatch {

using circuit_sentences::say;

namespace {

constexpr double most_bank_w = 1e6;  // above it every liquid boils
// Near the worst case of all gaps: a narrower one conducts, a wider one has a larger sand surface.
constexpr double settled_gap_m = 0.0007;

// Soil-warming cables operate at 10 to 20 W/m, from memory; the bed around them stays damp.
constexpr double leaves_damp_w_m = 30.0;

double verdict_c(double sheath_c, double air_c) {
    return air_c + verdict_factor * (sheath_c - air_c);
}

StoreCharge charge_of(const FilledStore& store, bool stagnation) {
    return {.hours = store.charge_hours,
            .air_c = stagnation ? store.hottest_air_c : store.air_c,
            .days = stagnation ? stagnation_days : bright_days};
}

/// The days of all banks of a store, in use or in a stagnation.
void set_days(std::vector<BankInStore>& banks, const FilledStore& filled, std::size_t place,
              bool stagnation) {
    for (std::size_t i = 0; i < banks.size(); ++i) {
        const ClearDays& days =
            i == place ? filled.days : filled.others[i < place ? i : i - 1].days;
        banks[i].days = stagnation ? days.year : days.season;
    }
}

HeatPoint at_in_liquid(const BankHeat& heat, double element_w) {
    StoreCharge charge = charge_of(*heat.store, false);
    charge.power_w = std::min(element_w * heat.elements, most_bank_w);
    charge.others_w = std::min(heat.store->others_w(false), most_bank_w);
    const SheathTemperature now = sheath_temperature(heat.store->medium, heat.store->store,
                                                     heat.element, heat.elements, charge);
    charge = charge_of(*heat.store, true);
    charge.power_w = std::min(element_w * heat.elements, most_bank_w);
    charge.others_w = std::min(heat.store->others_w(true), most_bank_w);
    const SheathTemperature later = sheath_temperature(heat.store->medium, heat.store->store,
                                                       heat.element, heat.elements, charge);
    constexpr double boiling_c = 99.9;
    return {.w_per_cm = now.w_per_cm,
            .sheath_c = now.sheath_verdict_c,
            .sheath_band = now.sheath_c,
            .coil_c = now.coil_c.high_c,
            .void_c = now.sheath_verdict_c,
            .bed_mean_c = now.bed_mean_c.typical_c,
            .wall_c = now.wall_c.high_c,
            .lid_c = now.lid_c.high_c,
            .floor_c = now.bed_mean_c.high_c,
            .inner_c = now.bed_mean_c.high_c,
            .stagnation_sheath_c = later.sheath_verdict_c,
            .stagnation_least_c = later.sheath_c.low_c,
            .stagnation_wall_c = later.wall_c.high_c,
            .stagnation_inner_c = later.bed_mean_c.high_c,
            .stagnation_lid_c = later.lid_c.high_c,
            .stagnation_floor_c = later.bed_mean_c.high_c,
            .stagnation_bottom_c = later.bed_mean_c.high_c,
            .boils = later.bed_mean_c.high_c > boiling_c};
}

}  // namespace

HeatPoint BankHeat::at(double element_w) const {
    need_equal();
    if (liquid) return at_in_liquid(*this, element_w);
    const double power_w = element_w * elements;
    const double w_per_m = power_w / heated_length_m;
    const BedTemperatures low = bed_temperatures(careful, power_w);
    const BedTemperatures typical = bed_temperatures(likely, power_w);
    const BedTemperatures high = bed_temperatures(conducting, power_w);
    const BedTemperatures late = bed_temperatures(stagnant, power_w);
    const BedTemperatures late_typical = bed_temperatures(stagnant_likely, power_w);
    const BedTemperatures late_out = bed_temperatures(stagnant_out, power_w);
    const BedEnds now = bed_ends(*this, low, typical, high);
    const BedEnds later = bed_ends(*this, late, late_typical, late_out);
    HeatPoint point{.w_per_cm = w_per_m / 100.0,
                    .sheath_c = verdict_c(low.sheath_c, careful.air_c),
                    .sheath_band = {.low_c = high.sheath_c,
                                    .typical_c = typical.sheath_c,
                                    .high_c = low.sheath_c},
                    .void_c = settled_sheath_c(
                        careful, power_w, verdict_c(low.sheath_c, careful.air_c), settled_gap_m),
                    .bed_mean_c = typical.bed_mean_c,
                    .wall_c = now.hottest_c(&BedTemperatures::wall_c),
                    .lid_c = now.hottest_c(&BedTemperatures::lid_c),
                    .floor_c = now.hottest_c(&BedTemperatures::floor_c),
                    .inner_c = now.hottest_c(&BedTemperatures::inner_c),
                    .stagnation_sheath_c = verdict_c(late.sheath_c, stagnant.air_c),
                    .stagnation_least_c = late_out.sheath_c,
                    .stagnation_wall_c = later.hottest_c(&BedTemperatures::wall_c),
                    .stagnation_inner_c = later.hottest_c(&BedTemperatures::inner_c),
                    .stagnation_lid_c = later.hottest_c(&BedTemperatures::lid_c),
                    .stagnation_floor_c = later.hottest_c(&BedTemperatures::floor_c),
                    .stagnation_bottom_c = later.hottest_c(&BedTemperatures::floor_inner_c)};
    if (careful.gap_m > 0.0) {
        BedCharge touching = careful;
        touching.gap_m = 0.0;
        point.gap_k = verdict_factor * (low.sheath_c - sheath_only_c(touching, power_w));
    }
    point.coil_c = point.sheath_c + coil_above_sheath_k(w_per_m);
    if (moist) {
        // Until it dries, a damp bed conducts more heat to its wall.
        const BedTemperatures damp = bed_temperatures(*moist, power_w);
        point.moist_sheath_c = damp.sheath_c;
        point.wall_c = std::max(point.wall_c, damp.wall_c);
        point.lid_c = std::max(point.lid_c, damp.lid_c);
        point.floor_c = std::max(point.floor_c, damp.floor_c);
        point.inner_c = std::max(point.inner_c, damp.inner_c);
    }
    point.stagnation_inner_c = std::max(point.stagnation_inner_c, point.inner_c);
    point.stagnation_lid_c = std::max(point.stagnation_lid_c, point.lid_c);
    point.stagnation_floor_c = std::max(point.stagnation_floor_c, point.floor_c);
    return point;
}

BankHeat::Judged BankHeat::judged_at(double element_w) const {
    need_equal();
    if (liquid) {
        const HeatPoint point = at_in_liquid(*this, element_w);
        return {point.sheath_c, point.coil_c, point.stagnation_sheath_c};
    }
    if (const auto damp = damp_at(element_w)) return *damp;
    const double power_w = element_w * elements;
    const double sheath_c = verdict_c(sheath_only_c(careful, power_w), careful.air_c);
    return {.sheath_c = sheath_c,
            .coil_c = sheath_c + coil_above_sheath_k(power_w / heated_length_m),
            .stagnation_sheath_c = verdict_c(sheath_only_c(stagnant, power_w), stagnant.air_c)};
}

std::optional<BankHeat::Judged> BankHeat::damp_at(double element_w) const {
    need_equal();
    const double power_w = element_w * elements;
    if (!moist_careful || !moist_stagnant || power_w > leaves_damp_w_m * heated_length_m) {
        return std::nullopt;
    }
    for (const HeatedLegs& other : moist_careful->others) {
        if (other.w_per_m() > leaves_damp_w_m) return std::nullopt;
    }
    const double sheath_c = verdict_c(sheath_only_c(*moist_careful, power_w), moist_careful->air_c);
    return Judged{.sheath_c = sheath_c,
                  .coil_c = sheath_c + coil_above_sheath_k(power_w / heated_length_m),
                  .stagnation_sheath_c =
                      verdict_c(sheath_only_c(*moist_stagnant, power_w), moist_stagnant->air_c)};
}

std::shared_ptr<const BankHeat> bank_heat(std::shared_ptr<const FilledStore> store,
                                          const Element& element,
                                          const std::optional<Sheath>& sheath,
                                          const std::optional<Alloy>& alloy, int elements) {
    if (!store) return nullptr;
    auto heat = std::make_shared<BankHeat>();
    heat->elements = elements;
    heat->element = element;
    heat->sheath = sheath;
    if (alloy) heat->coil_limit_c = alloy->limit_c;
    heat->liquid = store->medium.form == MediumForm::liquid;
    heat->assumed = store->assumed;
    heat->missing = missing_sizes(store->store);
    for (const std::string& name : missing_lengths(element)) heat->missing.push_back(name);
    for (const OtherBank& other : store->others) {
        for (const std::string& name : missing_lengths(other.element)) {
            heat->missing.push_back(other.own ? name + " of element \"" + other.element.id + '"'
                                              : name + " of circuit \"" + other.circuit + '"');
        }
    }
    heat->store = std::move(store);
    if (!heat->missing.empty()) return heat;
    const FilledStore& filled = *heat->store;
    std::vector<BankInStore> banks;
    for (const OtherBank& other : filled.others) {
        banks.push_back({.element = other.element,
                         .elements = other.elements,
                         .power_w = other.power_w(),
                         .of_same_circuit = other.own});
    }
    const std::size_t place = std::min(filled.place, banks.size());
    banks.insert(banks.begin() + static_cast<std::ptrdiff_t>(place),
                 {.element = element, .elements = elements});
    const LegLayout legs = joint_layout(banks, filled.store)[place];
    heat->heated_length_m = legs.heated_length_m();
    heat->misfit = legs.misfit;
    if (!heat->misfit.empty() || heat->liquid) return heat;
    const auto charged = [&](bool stagnation, ConductivityEnd end, bool moist = false) {
        StoreCharge charge = charge_of(filled, stagnation);
        charge.moist = moist;
        set_days(banks, filled, place, stagnation);
        BedCharge made = joint_bed_charge(filled.medium, filled.store, banks, place, charge, end);
        made.legs.unstated = filled.unstated;
        for (HeatedLegs& other : made.others) other.legs.unstated = filled.unstated;
        LegLayout beside = made.legs;
        if (filled.unstated.aside) {
            const double to_wall_m = beside.farthest_aside_m(made.shell);
            for (LegLayout::Leg& leg : beside.legs) leg.x_m += to_wall_m;
        }
        made.wall_concentration = beside.wall_concentration(made.shell);
        return made;
    };
    heat->careful = charged(false, ConductivityEnd::low);
    heat->likely = charged(false, ConductivityEnd::typical);
    heat->conducting = charged(false, ConductivityEnd::high);
    heat->stagnant = charged(true, ConductivityEnd::low);
    heat->stagnant_likely = charged(true, ConductivityEnd::typical);
    heat->stagnant_out = charged(true, ConductivityEnd::high);
    if (filled.store.moist.value_or(false) && filled.medium.moist_k_w_mk) {
        heat->moist = charged(false, ConductivityEnd::typical, true);
        heat->moist_careful = charged(false, ConductivityEnd::low, true);
        heat->moist_stagnant = charged(true, ConductivityEnd::low, true);
    }
    if (!filled.others.empty()) {
        heat->assumed.push_back({"store", "order of the elements", say<"circuit.side_by_side">(),
                                 filled.other_circuits() > 0 ? say<"circuit.order_of_circuits">()
                                                             : say<"circuit.order_of_text">()});
    }
    for (const auto* assumed :
         {&heat->careful.fill.assumed, &heat->careful.shell.assumed, &heat->careful.legs.assumed}) {
        heat->assumed.insert(heat->assumed.end(), assumed->begin(), assumed->end());
    }
    const auto& stated_mm = filled.store.element_height_mm;
    const double room_m = heat->careful.shell.height_m - legs.leg_length_m;
    if (stated_mm && !legs.lies && *stated_mm / 1000.0 > room_m) {
        const double under_lid_m = std::max(room_m - UnstatedPlaces::clear_m, 0.5 * room_m);
        heat->assumed.push_back({"store", "element_height_mm",
                                 sentence_of(Amount{1000.0 * under_lid_m, unit::millimetre, 3}),
                                 say<"circuit.legs_under_lid">(
                                     with<"stated">(Amount{*stated_mm, unit::millimetre, 3}))});
    }
    return heat;
}

}  // namespace heatmatch
