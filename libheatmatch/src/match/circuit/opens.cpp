#include "heatmatch/match/circuit/opens.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

/// A fuse for PV surely melts at that many times its rating. @cite iec-60269-6
constexpr double surely_melts = 1.45;
constexpr int longest_chain = 4;  // of controls that drive one another

const RunParts* run_of(const Circuit& circuit, const PlacedDevice& placed) {
    const auto found = std::find_if(
        circuit.runs.begin(), circuit.runs.end(),
        [&placed](const RunParts& parts) { return parts.run.name == placed.device.run; });
    return found == circuit.runs.end() ? nullptr : &*found;
}

bool drives(const PlacedDevice& driver, const PlacedDevice& driven) {
    const auto& names = driver.device.drives;
    return std::find(names.begin(), names.end(), driven.control.id) != names.end();
}

bool senses(const PlacedDevice& placed) {
    return placed.control.sense_high_c.has_value();
}

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

/// What keeps the contacts of a device from breaking this circuit, whoever opens them; yes without
/// a reason where nothing does.
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
    // A thermostat may switch by a semiconductor: what fails shorted is there for its limit.
    const auto semiconductor = is_semiconductor(control);
    if (occasion != Occasion::thermostat && semiconductor.value_or(false)) {
        return refused(opening, Obstacle::semiconductor, say<"opens.semiconductor">());
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

/// Volts that the poles of one conductor break at those amperes.
double one_side_v(const Control& control, int poles, double amperes) {
    double most = 0.0;
    for (const DcRating& rating : control.dc_ratings) {
        if (rating.a_dc < amperes) continue;
        const double share = std::min(1.0, static_cast<double>(poles) / rating.poles);
        most = std::max(most, rating.v_dc * share);
    }
    return most;
}

Opening opens_by_hand(const Circuit& circuit, const PlacedDevice& placed, const OpeningSite& site) {
    Opening opening = contacts(circuit, placed, Occasion::by_hand, site);
    const Control& control = placed.control;
    if (opening.answer == Answer::no) return opening;
    const auto operated = operated_of(control);
    if (!operated) return not_told(opening, "control.operated", say<"opens.how_not_told">());
    if (*operated != OperatedKind::by_hand) {
        return refused(opening, Obstacle::other_occasion, say<"opens.no_hand">());
    }
    if (opening.answer == Answer::unknown) return opening;
    if (!site.floating) return granted(opening, say<"opens.hand">());
    // One pole in all pairs does not tell that it has no more.
    const int has = poles_of(control).value_or(1);
    const int used = std::min(has, placed.device.poles_used);
    if (used < 2 && has < 2 && !control.poles) {
        return not_told(opening, "control.poles", say<"opens.poles_not_told">());
    }
    if (used < 2) return refused(opening, Obstacle::conductors, say<"opens.one_conductor">());
    const double side_v = one_side_v(control, used / 2, opening.amperes);
    if (side_v < opening.volts) {
        return refused(opening, Obstacle::conductors,
                       say<"opens.one_side">(with<"volts">(opening.volts, unit::volt),
                                             with<"rated">(side_v, unit::volt)));
    }
    return granted(opening, say<"opens.hand">());
}

Opening opens_driven(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                     const OpeningSite& site, int chain);

/// What those that a device drives come to: the first that opens, else the first that may.
Opening opens_through(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                      const OpeningSite& site, int chain) {
    Opening best = opening_load(circuit, placed, site);
    if (placed.device.drives.empty()) {
        return not_told(best, "device.drives", say<"opens.drives_not_told">());
    }
    best = refused(best, Obstacle::no_place, say<"opens.drives_none">());
    for (const PlacedDevice& other : circuit.devices) {
        if (!drives(placed, other)) continue;
        Opening found = opens_driven(circuit, other, occasion, site, chain + 1);
        if (found.answer == Answer::yes) {
            found.why = say<"opens.driven">(with<"breaker">(found.breaker));
            return found;
        }
        if (best.answer == Answer::no) best = std::move(found);
    }
    return best;
}

Opening opens_driven(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                     const OpeningSite& site, int chain) {
    const Control& control = placed.control;
    Opening opening = contacts(circuit, placed, occasion, site);
    const bool passes_on = placed.device.duty != Duty::breaks_dc && !placed.device.drives.empty();
    if (passes_on && chain < longest_chain) {
        const bool shorts = is_semiconductor(control).value_or(true);
        return shorts && occasion != Occasion::thermostat
                   ? refused(opening, Obstacle::semiconductor, say<"opens.semiconductor">())
                   : opens_through(circuit, placed, occasion, site, chain);
    }
    if (opening.answer == Answer::no) return opening;
    const auto operated = operated_of(control);
    if (!operated) return not_told(opening, "control.operated", say<"opens.how_not_told">());
    if (*operated != OperatedKind::by_coil && *operated != OperatedKind::by_signal) {
        return refused(opening, Obstacle::other_occasion, say<"opens.not_commanded">());
    }
    if (opening.answer == Answer::unknown) return opening;
    return granted(opening, say<"opens.itself">());
}

/// Its own contacts, or what it drives.
Opening opens_itself(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                     const OpeningSite& site) {
    if (placed.device.duty != Duty::breaks_dc) {
        return opens_through(circuit, placed, occasion, site, 0);
    }
    const Opening opening = contacts(circuit, placed, occasion, site);
    return opening.answer == Answer::yes ? granted(opening, say<"opens.itself">()) : opening;
}

/// By temperature: of one that senses, and of one that such a one drives.
Opening opens_by_temperature(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                             const OpeningSite& site) {
    const Opening load = opening_load(circuit, placed, site);
    const auto serves = [occasion](const PlacedDevice& other) {
        return senses(other) && (occasion != Occasion::limit || is_limit(other));
    };
    if (senses(placed)) {
        if (!serves(placed)) {
            return refused(load, Obstacle::other_occasion, say<"opens.closes_again">());
        }
        const Opening opening = opens_itself(circuit, placed, occasion, site);
        if (opening.answer == Answer::yes && !placed.device.set_c) {
            return not_told(opening, "device.set_c", say<"opens.not_set">());
        }
        return opening;
    }
    bool may_be_driven = false;
    for (const PlacedDevice& other : circuit.devices) {
        if (!serves(other)) continue;
        if (drives(other, placed)) return opens_driven(circuit, placed, occasion, site, 0);
        const bool untold = other.device.drives.empty();
        if (untold && other.device.duty == Duty::senses_only) may_be_driven = true;
    }
    const Opening able = opens_driven(circuit, placed, occasion, site, 0);
    if (able.answer == Answer::no) return able;
    if (may_be_driven) return not_told(load, "device.drives", say<"opens.driver_not_told">());
    return refused(load, Obstacle::other_occasion, say<"opens.undriven">());
}

Opening string_fuse_blows(const Circuit& circuit, const Opening& load) {
    if (!load.rated_a || load.unrated) {
        return refused(load, Obstacle::rating, too_few_volts(load));
    }
    const double fed_a = (circuit.panels.parallel - 1) * circuit.panel.i_sc_limit_a;
    const double melts_a = surely_melts * *load.rated_a;
    if (fed_a >= melts_a) return granted(load, say<"opens.blows">());
    return refused(load, Obstacle::other_occasion,
                   say<"opens.not_blown">(with<"fed">(fed_a, unit::ampere),
                                          with<"needed">(melts_a, unit::ampere)));
}

Opening opens_at_fault(const Circuit& circuit, const PlacedDevice& placed,
                       const OpeningSite& site) {
    const Opening load = opening_load(circuit, placed, site);
    const Control& control = placed.control;
    if (placed.device.duty == Duty::protects_a_string && is_fuse(control) && !control.detects) {
        return string_fuse_blows(circuit, load);
    }
    if (control.detects) {
        // A fuse to earth cuts the earth, not the circuit.
        if (operated_of(control) == OperatedKind::by_current) {
            return refused(load, Obstacle::other_occasion, say<"opens.cuts_the_earth">());
        }
        return opens_itself(circuit, placed, Occasion::fault, site);
    }
    for (const PlacedDevice& other : circuit.devices) {
        if (!other.control.detects || !drives(other, placed)) continue;
        return opens_driven(circuit, placed, Occasion::fault, site, 0);
    }
    return refused(load, Obstacle::other_occasion, say<"opens.no_fault">());
}

}  // namespace

Opening opening_load(const Circuit& circuit, const PlacedDevice& placed, const OpeningSite& site) {
    const RunParts* run = run_of(circuit, placed);
    // The branch that is opened last breaks the whole current; a string breaks its own.
    const bool of_string = placed.device.duty == Duty::protects_a_string ||
                           (run != nullptr && run->run.carries == Carried::string);
    const double share_a =
        circuit.short_circuit_current_a() / (of_string ? circuit.panels.parallel : 1);
    Opening opening{.volts = circuit.cold_voltage_v(),
                    .amperes = lasting_current_a(share_a, site.irradiance_w_m2),
                    .unrated = placed.control.dc_ratings.empty()};
    Control rated = placed.control;
    if (opening.unrated && !rated.ac_only.value_or(false)) rated.dc_ratings = {unrated_pair};
    const int used = std::min(placed.device.poles_used,
                              rated.poles ? *poles_of(rated) : placed.device.poles_used);
    for (const DcRating& rating : rated.dc_ratings) {
        if (rating.poles <= used) opening.rated_v = std::max(opening.rated_v, rating.v_dc);
    }
    opening.rated_a = breaking_current_a(rated, opening.volts, used);
    return opening;
}

Opening opens(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
              const OpeningSite& site) {
    if (occasion == Occasion::by_hand) return opens_by_hand(circuit, placed, site);
    if (occasion == Occasion::fault) return opens_at_fault(circuit, placed, site);
    return opens_by_temperature(circuit, placed, occasion, site);
}

bool is_limit(const PlacedDevice& placed) {
    return senses(placed) && stays_open(placed.control);
}

const PlacedDevice* opening_limit(const Circuit& circuit) {
    const auto found = std::find_if(
        circuit.devices.begin(), circuit.devices.end(), [&](const PlacedDevice& placed) {
            return is_limit(placed) &&
                   opens(circuit, placed, Occasion::limit).answer == Answer::yes;
        });
    return found == circuit.devices.end() ? nullptr : &*found;
}

}  // namespace heatmatch
