#include "heatmatch/match/margins/device_margins.hpp"

#include "said.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/margins/fuse_margins.hpp"

namespace heatmatch {

using margins_sentences::say;

namespace {

std::string subject_of(const PlacedDevice& placed) {
    return "device \"" + placed.control.id + '"';
}

Margin breaking_margin(const Circuit& circuit, const PlacedDevice& placed,
                       const OpeningSite& site) {
    const Control& control = placed.control;
    const Opening opening = opens(circuit, placed, Occasion::by_hand, site);
    Margin margin{.name = "dc breaking",
                  .subject = subject_of(placed),
                  .value = opening.volts,
                  .unit = unit::volt,
                  .source = control.provenance.source};
    if (control.ac_only.value_or(false)) {
        margin.limit = 0.0;
        margin.headroom = -1.0;
        margin.severity = Severity::danger;
        margin.said = say<"device.made_for_ac">();
        return margin;
    }
    if (opening.obstacle == Obstacle::fuse) {
        margin.limit = 0.0;
        margin.headroom = -1.0;
        margin.severity = Severity::danger;
        margin.said = say<"device.fuse_is_no_switch">();
        return margin;
    }
    if (opening.unrated) {
        margin.assumed.push_back(
            {.part = margin.subject,
             .field = "dc_ratings",
             .value = say<"device.rating">(with<"volts">(unrated_pair.v_dc, unit::volt),
                                           with<"amperes">(unrated_pair.a_dc, unit::ampere)),
             .source = sentence_of(Name{"common-practice"})});
    }
    if (!opening.rated_a) {
        margin.limit = opening.rated_v;
        margin.said = say<"device.breaks_volts">();
        if (*margin.limit <= 0.0) {
            margin.said = say<"device.no_pair">();
            margin.headroom = -1.0;
            margin.severity = Severity::danger;
            return margin;
        }
        grade(margin);
        return margin;
    }
    margin.value = opening.amperes;
    margin.limit = opening.rated_a;
    margin.unit = unit::ampere;
    margin.said = say<"device.breaks_amperes">(with<"volts">(opening.volts, unit::volt),
                                               with<"factor">(lasting_current_factor));
    grade(margin);
    return margin;
}

/// A device that stays closed under load only has to carry the current.
Margin carrying_margin(const PlacedDevice& placed, double current_a) {
    const Control& control = placed.control;
    Margin margin{.name = "dc carrying",
                  .subject = subject_of(placed),
                  .value = current_a,
                  .unit = unit::ampere,
                  .said = say<"device.carries">(with<"factor">(lasting_current_factor)),
                  .source = control.provenance.source};
    for (const DcRating& rating : control.dc_ratings) {
        margin.limit = std::max(margin.limit.value_or(0.0), rating.a_dc);
    }
    if (!margin.limit) margin.limit = control.a_ac;
    if (!margin.limit) {
        margin.said = say<"device.carries_alone">();
        margin.missing = {"dc_ratings"};
    }
    grade(margin);
    return margin;
}

Margin polarity_margin(const PlacedDevice& placed) {
    Margin margin{.name = "polarity",
                  .subject = subject_of(placed),
                  .consequence = Severity::caution,
                  .source = placed.control.provenance.source};
    const bool polarised = placed.control.polarised.value_or(true);
    margin.severity = polarised ? Severity::caution : Severity::none;
    margin.said = polarised ? say<"device.polarised">() : say<"device.either_way">();
    if (!placed.control.polarised) {
        margin.said = say<"device.polarity_assumed">();
        margin.missing = {"control.polarised"};
        margin.assumed.push_back({.part = margin.subject,
                                  .field = "polarised",
                                  .value = sentence_of(Name{"yes"}),
                                  .source = sentence_of(Name{"common-practice"})});
    }
    return margin;
}

Margin body_margin(const PlacedDevice& placed, const Circuit& circuit) {
    const auto run = std::find_if(
        circuit.runs.begin(), circuit.runs.end(),
        [&placed](const RunParts& parts) { return parts.run.name == placed.device.run; });
    const bool known = run != circuit.runs.end() && run->run.surroundings.air_c;
    Margin margin{.name = "device temperature",
                  .subject = subject_of(placed),
                  .consequence = Severity::warning,
                  .limit = placed.control.own_limit_c,
                  .unit = unit::celsius,
                  .said = say<"device.body">(),
                  .source = placed.control.provenance.source};
    if (known) margin.value = run->run.surroundings.air_c;
    if (!known || !margin.limit) {
        margin.said = say<"device.body_unknown">();
        margin.missing = {known ? "own_limit_c" : "run.surroundings.air_c"};
    }
    grade(margin, room_c);
    return margin;
}

Margin senses_in_circuit(const PlacedDevice& placed) {
    Margin margin{.name = "dc breaking",
                  .subject = subject_of(placed),
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"device.senses_in_run">(with<"run">(placed.device.run)),
                  .source = "common-practice"};
    return margin;
}

/// How bad it is where the nearest to a disconnect is kept from it by that.
Severity without_disconnect(Obstacle obstacle) {
    switch (obstacle) {
        case Obstacle::fuse:
        case Obstacle::made_for_ac:
        case Obstacle::semiconductor:
        case Obstacle::rating:
            return Severity::danger;
        default:
            return Severity::warning;
    }
}

/// Something must be able to open the circuit by hand.
Margin disconnect_margin(const Circuit& circuit, const OpeningSite& site) {
    Margin margin{.name = "disconnect",
                  .subject = "circuit",
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"device.no_disconnect">(),
                  .source = "nec-690-13"};
    bool listed = false;
    for (const PlacedDevice& placed : circuit.devices) {
        if (placed.device.duty != Duty::breaks_dc) continue;
        const Opening opening = opens(circuit, placed, Occasion::by_hand, site);
        if (opening.answer == Answer::yes) {
            margin.severity = Severity::none;
            margin.consequence = Severity::warning;
            margin.headroom.reset();
            margin.missing.clear();
            margin.said = say<"device.disconnect">(with<"name">(placed.control.id));
            return margin;
        }
        const Severity found = without_disconnect(opening.obstacle);
        if (listed && found >= margin.severity) continue;
        listed = true;
        margin.severity = found;
        margin.consequence = found;
        margin.headroom.reset();
        if (found == Severity::danger) margin.headroom = -1.0;
        margin.missing = opening.missing;
        margin.said =
            say<"device.bad_disconnect">(with<"name">(placed.control.id), with<"why">(opening.why));
    }
    return margin;
}

/// Whether what switches by temperature in use opens by those contacts too.
bool thermostat_opens_by(const Circuit& circuit, const std::string& breaker) {
    return std::any_of(circuit.devices.begin(), circuit.devices.end(),
                       [&](const PlacedDevice& placed) {
                           if (!placed.control.sense_high_c || is_limit(placed)) return false;
                           const Opening opening = opens(circuit, placed, Occasion::thermostat);
                           return opening.answer == Answer::yes && opening.breaker == breaker;
                       });
}

/// A second, independent limit that does not reset by itself, and what it opens.
Margin independent_limit_margin(const Circuit& circuit) {
    Margin margin{.name = "independent limit",
                  .subject = "circuit",
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"device.no_limit">(),
                  .source = "common-practice"};
    bool listed = false;
    for (const PlacedDevice& placed : circuit.devices) {
        if (!is_limit(placed)) continue;
        const Opening opening = opens(circuit, placed, Occasion::limit);
        if (opening.answer == Answer::yes) {
            const bool common = thermostat_opens_by(circuit, opening.breaker);
            margin.severity = common ? Severity::caution : Severity::none;
            margin.missing.clear();
            margin.said = say<"device.limit">(with<"name">(placed.control.id),
                                              with<"breaker">(opening.breaker));
            if (common) add(margin, say<"device.common_cause">());
            if (!common) return margin;
            listed = true;
            continue;
        }
        if (listed) continue;
        listed = true;
        margin.missing = opening.missing;
        margin.said = say<"device.limit_opens_nothing">(with<"name">(placed.control.id),
                                                        with<"why">(opening.why));
    }
    return margin;
}

}  // namespace

std::vector<Margin> device_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    // A site that nobody calls grounded floats: then every conductor has to be opened.
    const OpeningSite at{.floating = site.earthing != Earthing::grounded,
                         .irradiance_w_m2 = site.bright_irradiance_w_m2};
    const double whole_a =
        lasting_current_a(circuit.short_circuit_current_a(), site.bright_irradiance_w_m2);
    for (const PlacedDevice& placed : circuit.devices) {
        const bool in_circuit = !placed.device.run.empty();
        if (placed.device.duty == Duty::senses_only) {
            if (in_circuit) margins.push_back(senses_in_circuit(placed));
            continue;
        }
        if (placed.device.duty == Duty::protects_a_string) {
            for (Margin& margin : fuse_margins(circuit, placed)) {
                margins.push_back(std::move(margin));
            }
            continue;
        }
        const auto run = std::find_if(
            circuit.runs.begin(), circuit.runs.end(),
            [&placed](const RunParts& parts) { return parts.run.name == placed.device.run; });
        const bool known = run != circuit.runs.end();
        if (placed.device.duty == Duty::carries_dc) {
            const double share = known ? circuit.current_share(run->run) : 1.0;
            margins.push_back(carrying_margin(placed, whole_a * share));
            margins.push_back(body_margin(placed, circuit));
            continue;
        }
        margins.push_back(breaking_margin(circuit, placed, at));
        margins.push_back(polarity_margin(placed));
        margins.push_back(body_margin(placed, circuit));
    }
    margins.push_back(disconnect_margin(circuit, at));
    margins.push_back(independent_limit_margin(circuit));
    return margins;
}

}  // namespace heatmatch
