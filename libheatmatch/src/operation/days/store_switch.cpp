#include "heatmatch/operation/days/store_switch.hpp"

#include "sentences.hpp"

#include "heatmatch/match/circuit/opens.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

constexpr double usual_differential_k = 10.0;  // from memory

bool senses(const Control& control) {
    return control.sense_high_c.has_value();
}

/// Obstacles that keep contacts from opening although they are operated.
bool counts_as_welded(Obstacle obstacle) {
    return obstacle == Obstacle::rating || obstacle == Obstacle::made_for_ac ||
           obstacle == Obstacle::semiconductor || obstacle == Obstacle::fuse;
}

}  // namespace

std::vector<StoreSwitch> store_switches(const Circuit& circuit, Sentences& remarks,
                                        const OpeningSite& site) {
    std::vector<StoreSwitch> switches;
    for (const PlacedDevice& placed : circuit.devices) {
        const Control& control = placed.control;
        if (!senses(control)) continue;
        if (!placed.device.set_c) {
            remarks.push_back(say<"days.not_set">(with<"control">(control.id)));
            continue;
        }
        const bool limit = is_limit(placed);
        const Occasion occasion = limit ? Occasion::limit : Occasion::thermostat;
        const Opening opening = opens(circuit, placed, occasion, site);
        if (opening.obstacle == Obstacle::out_of_range) {
            remarks.push_back(
                say<"days.never_opens">(with<"control">(control.id), with<"why">(opening.why)));
            continue;
        }
        const bool welded = counts_as_welded(opening.obstacle);
        if (opening.answer != Answer::yes && !welded) {
            remarks.push_back(say<"days.commands_nothing">(with<"control">(control.id),
                                                           with<"why">(opening.why)));
            continue;
        }
        StoreSwitch made{.device = control.id,
                         .senses = placed.device.senses.value_or(SensedPlace::wall),
                         .opens_c = *placed.device.set_c,
                         .resets = !limit,
                         .breaks = opening.breaker,
                         .can_break = !welded};
        made.closes_c = made.opens_c - control.differential_k.value_or(usual_differential_k);
        if (welded) {
            remarks.push_back(
                say<"days.welded">(with<"breaker">(made.breaks), with<"why">(opening.why)));
        }
        switches.push_back(std::move(made));
    }
    return switches;
}

}  // namespace heatmatch
