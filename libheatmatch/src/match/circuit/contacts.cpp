#include "contacts.hpp"

#include "sentences.hpp"

#include <utility>

namespace heatmatch {

using circuit_sentences::say;

Opening refused(Opening opening, Obstacle obstacle, Sentence why) {
    opening.missing.clear();
    opening.answer = Answer::no;
    opening.obstacle = obstacle;
    opening.why = std::move(why);
    return opening;
}

Opening not_told(Opening opening, std::string field, Sentence why) {
    opening.answer = Answer::unknown;
    opening.obstacle = Obstacle::not_told;
    opening.why = std::move(why);
    opening.missing.push_back(std::move(field));
    return opening;
}

Opening granted(Opening opening, Sentence why) {
    opening.answer = Answer::yes;
    opening.why = std::move(why);
    return opening;
}

Sentence too_few_volts(const Opening& load) {
    return say<"opens.volts">(with<"volts">(load.volts, unit::volt),
                              with<"rated">(load.rated_v, unit::volt));
}

Opening contacts(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                 const OpeningSite& site) {
    Opening opening = opening_load(circuit, placed, site);
    const Control& control = placed.control;
    opening.breaker = control.id;
    if (placed.device.duty != Duty::breaks_dc) {
        return refused(opening, Obstacle::other_duty, say<"opens.other_duty">());
    }
    if (is_fuse(control)) return refused(opening, Obstacle::fuse, say<"opens.fuse">());
    if (control.ac_only.value_or(false)) {
        return refused(opening, Obstacle::made_for_ac, say<"opens.made_for_ac">());
    }
    // A thermostat may use a semiconductor: the limit covers its failing shorted.
    const auto semiconductor = is_semiconductor(control);
    if (occasion != Occasion::thermostat && semiconductor.value_or(false)) {
        return refused(opening, Obstacle::semiconductor, say<"opens.semiconductor">());
    }
    if (placed.circuits > 1) {
        // Through a common pole the circuits would be one.
        const int needed = placed.circuits * placed.device.poles_used;
        const auto poles = poles_of(control);
        const auto count = with<"circuits">(static_cast<double>(placed.circuits));
        if (!poles) {
            return not_told(opening, "control.poles", say<"opens.shared_not_told">(count));
        }
        if (*poles < needed) {
            return refused(opening, Obstacle::conductors,
                           say<"opens.shared">(count, with<"needed">(static_cast<double>(needed)),
                                               with<"poles">(static_cast<double>(*poles))));
        }
    }
    if (!opening.rated_a) return refused(opening, Obstacle::rating, too_few_volts(opening));
    if (opening.amperes > *opening.rated_a) {
        return refused(opening, Obstacle::rating,
                       say<"opens.amperes">(with<"amperes">(opening.amperes, unit::ampere),
                                            with<"volts">(opening.volts, unit::volt),
                                            with<"rated">(*opening.rated_a, unit::ampere)));
    }
    const RunParts* run = run_of(circuit, placed);
    if (run == nullptr) return refused(opening, Obstacle::no_place, say<"opens.no_run">());
    if (circuit.current_share(run->run) < 1.0) {
        return refused(opening, Obstacle::no_place, say<"opens.part">());
    }
    const bool by_hand = operated_of(control) == OperatedKind::by_hand;
    if (occasion != Occasion::thermostat && !semiconductor && !by_hand) {
        return not_told(opening, "control.semiconductor", say<"opens.semiconductor_not_told">());
    }
    opening.answer = Answer::yes;
    return opening;
}

}  // namespace heatmatch
