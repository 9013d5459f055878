#include "heatmatch/match/circuit/tail_heat.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/heat/air.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

constexpr double default_cold_mm = 50.0;
constexpr double default_contact_ohm = 0.005;
constexpr double longest_beyond_m = 0.03;
constexpr double nearest_bed_m = 0.025;
constexpr double thinnest_tube_mm = 2.0;
constexpr double thickest_tube_mm = 100.0;
constexpr double most_a = 1e4;
// At this temperature everything has failed: higher ones count as this.
constexpr double hottest_c = 1500.0;
constexpr double boiling_water_c = 100.0;
constexpr double still_water_w_mk = 0.6;  // moving water cools better
constexpr double mineral_wool_w_mk = 0.04;
constexpr double usual_lagging_m = 0.05;
constexpr double thickest_lagging_m = 0.1;  // default; more has little effect on a tail
constexpr double lagged_below_u = 1.0;      // threshold where lagging is stated as none; same as
                                            // for materials

TerminalPlace place_of(const Store& store, const RunParts& run, TailHeat& tail) {
    const bool in_bed = run.run.surroundings.kind == SurroundingsKind::bed;
    if (store.terminals == StoreTerminals::buried) return TerminalPlace::buried;
    if (in_bed && store.terminals) {
        tail.assumed.push_back(
            {"store", "terminals", sentence_of(Name{"buried"}), say<"circuit.run_in_bed">()});
        return TerminalPlace::buried;
    }
    if (store.terminals == StoreTerminals::box_outside) return TerminalPlace::in_box;
    if (store.terminals == StoreTerminals::through_wall) return TerminalPlace::outside;
    tail.assumed.push_back({"store", "terminals",
                            sentence_of(Name{in_bed ? "buried" : "through wall"}),
                            say<"circuit.around_run">()});
    return in_bed ? TerminalPlace::buried : TerminalPlace::outside;
}

/// Thickness of the lagging through which a cold end and its wire pass; 0 around a wall without any
/// indication of lagging [m].
double lagging_m(const Store& store, TailHeat& tail) {
    if (tail.tail.place != TerminalPlace::outside) return 0.0;
    const bool none = store.lagging == StoreMaterial::none;
    const bool lagged = none ? store.side_u_w_m2k.value_or(lagged_below_u) < lagged_below_u
                             : store.lagging || store.side_u_w_m2k;
    if (store.lagging_mm && !none) return *store.lagging_mm / 1000.0;
    if (!lagged) return 0.0;
    const double found_m =
        store.side_u_w_m2k ? mineral_wool_w_mk / *store.side_u_w_m2k : usual_lagging_m;
    const double taken_m = std::min(found_m, thickest_lagging_m);
    tail.assumed.push_back(
        {"store", "lagging_mm", sentence_of(Amount{1000.0 * taken_m, unit::millimetre}),
         store.side_u_w_m2k
             ? say<"circuit.lagging_by_loss">(with<"wool">(mineral_wool_w_mk, unit::watt_per_m_k))
             : sentence_of(Name{"from memory"})});
    return taken_m;
}

/// The head of an element made for a tank is on the tank wall, as warm as the liquid, whatever the
/// temperature of the heated sheath inside.
bool is_on_tank(const Circuit& circuit, TerminalPlace place) {
    return circuit.heat->liquid && place != TerminalPlace::buried &&
           is_made_for_liquid(circuit.bank.element);
}

/// At the wall of a bed with the low or high conductivity, whichever is hotter.
HotTail beside_wall_of(const TailHeat& tail, const BankHeat& heat, double power_w) {
    if (tail.air_stated && tail.tail.lagging_m <= 0.0) return tail.tail;
    const BulkTemperatures low = bulk_only(heat.careful, power_w);
    const BulkTemperatures high = bulk_only(heat.conducting, power_w);
    return tail.beside_wall(std::max(low.inner_c, high.inner_c), std::max(low.wall_c, high.wall_c));
}

}  // namespace

TailHeat tail_heat(const Circuit& circuit) {
    TailHeat result;
    const RunParts* run = circuit.run_at_element();
    if (run != nullptr) result.run = *run;
    if (!circuit.heat) {
        result.missing = {"store"};
        return result;
    }
    if (circuit.bank.unlike) {
        result.missing = {"one element of the bank"};
        return result;
    }
    const Element& element = circuit.bank.element;
    if (run == nullptr || !run->wire) {
        result.missing = {run == nullptr ? "runs" : "wire"};
        return result;
    }
    if (!circuit.heat->missing.empty()) {
        result.missing = circuit.heat->missing;
        return result;
    }
    if (*element.sheath_diameter_mm < thinnest_tube_mm ||
        *element.sheath_diameter_mm > thickest_tube_mm) {
        result.missing = {"the cold end of an element that is not a tube"};
        return result;
    }
    const FilledStore& store = *circuit.heat->store;
    const std::string title = "element \"" + element.id + '"';
    const std::string title_of_run = "run \"" + run->run.name + '"';
    const Sentence from_memory = sentence_of(Name{"from memory"});
    HotTail& tail = result.tail;
    tail.place = place_of(store.store, *run, result);
    tail.sheath_diameter_mm = *element.sheath_diameter_mm;
    const auto conductivity = sheath_conductivity_w_mk(element.sheath);
    if (conductivity) {
        tail.sheath_conductivity_w_mk = *conductivity;
    } else {
        result.missing = {"sheath"};  // a copper sheath conducts some three times the heat
        return result;
    }
    if (circuit.bank.sheath && circuit.bank.sheath->emissivity) {
        tail.sheath_emissivity = *circuit.bank.sheath->emissivity;
    }
    const double cold_m = element.cold_length_mm.value_or(default_cold_mm) / 1000.0;
    if (!element.cold_length_mm) {
        result.assumed.push_back({title, "cold_length_mm",
                                  sentence_of(Amount{default_cold_mm, unit::millimetre}),
                                  from_memory});
    }
    tail.cold_length_m = cold_m;
    if (is_on_tank(circuit, tail.place)) {
        tail.beyond_m = 0.0;
    } else if (tail.place != TerminalPlace::buried) {
        tail.beyond_m = std::min(longest_beyond_m, cold_m);
        tail.cold_length_m = cold_m - tail.beyond_m;
    }
    const Surroundings& around = run->run.surroundings;
    const bool in_bed = around.kind == SurroundingsKind::bed;
    tail.around = around;
    tail.lagging_m = lagging_m(store.store, result);
    tail.air_c = in_bed ? store.air_c : around.air_c.value_or(store.air_c);
    result.air_stated = in_bed || around.air_c;
    if (!result.air_stated) {
        result.assumed.push_back(
            {title_of_run, "surroundings.air_c",
             say<"circuit.air_at_wall">(with<"air">(store.air_c, unit::celsius, 4)),
             say<"circuit.air_beside_store">()});
        if (run->run.chooses()) {
            result.assumed.push_back(
                {title_of_run, "wire", sentence_of(Name{run->wire->id}),
                 say<"circuit.chosen_as_for">(with<"air">(careful_air_c, unit::celsius))});
        }
    }
    tail.contact_ohm = run->run.joint_ohm.value_or(default_contact_ohm);
    if (!run->run.joint_ohm) {
        result.assumed.push_back({title_of_run, "joint_ohm at the terminal",
                                  sentence_of(Amount{default_contact_ohm, unit::ohm}),
                                  from_memory});
    }
    result.bed_distance_m = std::max(nearest_bed_m, tail.cold_length_m);
    return result;
}

HotTail TailHeat::beside_wall(double inner_c, double outer_c) const {
    HotTail beside = tail;
    beside.lagging_hot_c = std::min(inner_c, hottest_c);
    if (!air_stated) {
        const double wall_c = std::min(outer_c, hottest_c);
        beside.air_c = std::max(tail.air_c, 0.5 * (tail.air_c + wall_c));
    }
    return beside;
}

TailTemperatures tail_at(const TailHeat& tail, const Circuit& circuit, double element_w,
                         double sheath_c) {
    const BankHeat& heat = *circuit.heat;
    HotTail hot;
    double other_w_mk = 0.0;
    if (heat.liquid) {
        const HeatPoint point = heat.at(element_w);
        hot = tail.beside_wall(point.inner_c, point.wall_c);
        hot.bed_c = point.boils ? boiling_water_c : point.bed_mean_c;
        hot.bed_conductivity_w_mk = still_water_w_mk;
    } else {
        const double power_w = element_w * heat.elements;
        hot = beside_wall_of(tail, heat, power_w);
        hot.bed_c = bed_temperature_c(heat.careful, power_w, tail.bed_distance_m);
        constexpr double at_k = room_c + zero_celsius_k;
        hot.bed_conductivity_w_mk = heat.careful.fill.conductivity.at(at_k);
        other_w_mk = heat.conducting.fill.conductivity.at(at_k);
    }
    hot.sheath_c = sheath_c;
    const Surroundings& around = tail.run.run.surroundings;
    if (around.kind == SurroundingsKind::bed && around.air_c &&
        hot.place == TerminalPlace::buried) {
        hot.bed_c = std::max(hot.bed_c, *around.air_c);
    }
    hot.bed_c = std::min(hot.bed_c, hottest_c);
    const bool on_tank = is_on_tank(circuit, hot.place);
    hot.sheath_c = on_tank ? hot.bed_c : std::clamp(hot.sheath_c, hot.bed_c, hottest_c);
    hot.pin_a = std::min(std::sqrt(element_w / circuit.bank.each.typical_ohm), most_a);
    const bool of_branch = tail.run.run.carries == Carried::branch;
    hot.current_a = std::min(*hot.pin_a * circuit.bank.current_over_element(of_branch), most_a);
    const auto& insulation = tail.run.insulation;
    const auto solved = [&] {
        return tail_temperatures(hot, *tail.run.wire, insulation ? &*insulation : nullptr);
    };
    const double low_w_mk = hot.bed_conductivity_w_mk;
    // A bed of high conductivity cools a buried terminal, and heats one behind a short cold end.
    const auto at_either_end = [&] {
        hot.bed_conductivity_w_mk = low_w_mk;
        TailTemperatures found = solved();
        if (other_w_mk <= 0.0 || hot.place == TerminalPlace::buried || found.runaway) return found;
        hot.bed_conductivity_w_mk = other_w_mk;
        TailTemperatures conducting = solved();
        const bool worse = conducting.runaway || conducting.terminal_c > found.terminal_c;
        return worse ? conducting : found;
    };
    TailTemperatures hotter = at_either_end();
    // Lagging that would keep the heat of hotter air out does not count.
    const bool kept_out = hot.place != TerminalPlace::buried && hotter.terminal_c < hot.air_c &&
                          (hot.lagging_m > 0.0 || hot.around.kind != SurroundingsKind::open_air);
    if (kept_out && !hotter.runaway) {
        hot.lagging_m = 0.0;
        hot.around = {};
        hotter.terminal_c = std::max(hotter.terminal_c, at_either_end().terminal_c);
    }
    if (on_tank) hotter.terminal_c = std::max(hotter.terminal_c, hot.bed_c);
    return hotter;
}

}  // namespace heatmatch
