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
// Beyond it everything has failed: what is hotter counts as this.
constexpr double hottest_c = 1500.0;
constexpr double boiling_water_c = 100.0;
constexpr double still_water_w_mk = 0.6;  // moving, it cools better

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

/// The head of an element made for a tank sits on its wall, as warm as the liquid, whatever the
/// heated part of the sheath reaches within.
bool is_on_tank(const Circuit& circuit, TerminalPlace place) {
    return circuit.heat->liquid && place != TerminalPlace::buried &&
           is_made_for_liquid(circuit.bank.element);
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
        result.missing = {"the cold end of an element that is no tube"};
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
        result.missing = {"sheath"};  // copper leads some three times the heat of stainless
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
    tail.air_c = in_bed ? store.air_c : around.air_c.value_or(store.air_c);
    if (!in_bed && !around.air_c) {
        result.assumed.push_back({title_of_run, "surroundings.air_c",
                                  sentence_of(Amount{store.air_c, unit::celsius, 4}),
                                  say<"circuit.air_around_store">()});
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

TailTemperatures tail_at(const TailHeat& tail, const Circuit& circuit, double element_w,
                         double sheath_c) {
    HotTail hot = tail.tail;
    const BankHeat& heat = *circuit.heat;
    hot.sheath_c = sheath_c;
    double other_w_mk = 0.0;
    if (heat.liquid) {
        const HeatPoint point = heat.at(element_w);
        hot.bed_c = point.boils ? boiling_water_c : point.bed_mean_c;
        hot.bed_conductivity_w_mk = still_water_w_mk;
    } else {
        hot.bed_c = bed_temperature_c(heat.careful, element_w * heat.elements, tail.bed_distance_m);
        constexpr double at_k = room_c + zero_celsius_k;
        hot.bed_conductivity_w_mk = heat.careful.fill.conductivity.at(at_k);
        other_w_mk = heat.conducting.fill.conductivity.at(at_k);
    }
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
    hot.current_a = std::min(*hot.pin_a * (of_branch ? 1.0 : circuit.bank.hookup.parallel), most_a);
    const auto& insulation = tail.run.insulation;
    const auto solved = [&] {
        return tail_temperatures(hot, *tail.run.wire, insulation ? &*insulation : nullptr);
    };
    TailTemperatures hotter = solved();
    // A bed that conducts well cools a buried terminal, and heats one behind a short cold end.
    if (other_w_mk > 0.0 && hot.place != TerminalPlace::buried && !hotter.runaway) {
        hot.bed_conductivity_w_mk = other_w_mk;
        TailTemperatures conducting = solved();
        if (conducting.runaway || conducting.terminal_c > hotter.terminal_c) hotter = conducting;
    }
    if (on_tank) hotter.terminal_c = std::max(hotter.terminal_c, hot.bed_c);
    return hotter;
}

}  // namespace heatmatch
