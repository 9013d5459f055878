#include "heatmatch/match/circuit/opens.hpp"

#include "contacts.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/string_protection.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

/// A PV fuse certainly melts at that multiple of its rating. @cite iec-60269-6
constexpr double surely_melts = 1.45;
constexpr int longest_chain = 4;  // of controls that drive one another

bool drives(const PlacedDevice& driver, const PlacedDevice& driven) {
    const auto& names = driver.device.drives;
    return std::find(names.begin(), names.end(), driven.control.id) != names.end();
}

bool senses(const PlacedDevice& placed) {
    return placed.control.sense_high_c.has_value();
}

/// Voltage that the poles of one conductor break at that current.
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
    // Pairs for one pole do not exclude further poles.
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

/// Result for the controls that a device drives: the first that opens, else the first that may.
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

/// Its own contacts, or a driven device.
Opening opens_itself(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                     const OpeningSite& site) {
    if (placed.device.duty != Duty::breaks_dc) {
        return opens_through(circuit, placed, occasion, site, 0);
    }
    const Opening opening = contacts(circuit, placed, occasion, site);
    return opening.answer == Answer::yes ? granted(opening, say<"opens.itself">()) : opening;
}

/// A sensing device opens at its set point, if that is within its range.
Opening as_set(Opening opening, const PlacedDevice& sensor) {
    const auto& set_c = sensor.device.set_c;
    const auto& low_c = sensor.control.sense_low_c;
    const double high_c = *sensor.control.sense_high_c;
    if (!set_c) {
        if (opening.answer != Answer::yes) return opening;
        return not_told(std::move(opening), "device.set_c", say<"opens.not_set">());
    }
    if (*set_c <= high_c && (!low_c || *set_c >= *low_c)) return opening;
    const auto set = with<"set">(*set_c, unit::celsius);
    const auto high = with<"high">(high_c, unit::celsius);
    return refused(std::move(opening), Obstacle::out_of_range,
                   low_c ? say<"opens.out_of_range">(set, with<"low">(*low_c, unit::celsius), high)
                         : say<"opens.above_range">(set, high));
}

/// By temperature: a sensing device, or one driven by a sensing device.
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
        return as_set(opens_itself(circuit, placed, occasion, site), placed);
    }
    Opening able = opens_driven(circuit, placed, occasion, site, 0);
    std::optional<Opening> driven;
    bool may_be_driven = false;
    for (const PlacedDevice& other : circuit.devices) {
        if (!serves(other)) continue;
        if (drives(other, placed)) {
            Opening found = as_set(able, other);
            if (found.answer == Answer::yes) return found;
            if (!driven || driven->answer == Answer::no) driven = std::move(found);
            continue;
        }
        const bool untold = other.device.drives.empty();
        if (untold && other.device.duty == Duty::senses_only) may_be_driven = true;
    }
    if (driven) return *driven;
    if (able.answer == Answer::no) return able;
    if (may_be_driven) return not_told(load, "device.drives", say<"opens.driver_not_told">());
    return refused(load, Obstacle::other_occasion, say<"opens.undriven">());
}

Opening string_fuse_blows(const Circuit& circuit, const PlacedDevice& placed, const Opening& load) {
    if (!in_a_string(circuit, placed)) {
        return refused(load, Obstacle::no_place, say<"opens.behind_the_joint">());
    }
    if (!load.rated_a || load.unrated) {
        return refused(load, Obstacle::rating, too_few_volts(load));
    }
    const double fed_a = circuit.surely_fed_a();
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
        return string_fuse_blows(circuit, placed, load);
    }
    if (control.detects) {
        // A fuse in the connection to earth interrupts that connection, not the circuit.
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

Opening opens(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
              const OpeningSite& site) {
    if (occasion == Occasion::by_hand) return opens_by_hand(circuit, placed, site);
    if (occasion == Occasion::fault) return opens_at_fault(circuit, placed, site);
    return opens_by_temperature(circuit, placed, occasion, site);
}

bool is_limit(const PlacedDevice& placed) {
    return senses(placed) && stays_open(placed.control);
}

const PlacedDevice* opening_limit(const Circuit& circuit, const OpeningSite& site) {
    const auto found = std::find_if(
        circuit.devices.begin(), circuit.devices.end(), [&](const PlacedDevice& placed) {
            return is_limit(placed) &&
                   opens(circuit, placed, Occasion::limit, site).answer == Answer::yes;
        });
    return found == circuit.devices.end() ? nullptr : &*found;
}

}  // namespace heatmatch
