#include "heatmatch/match/margins/device_margins.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/circuit/string_protection.hpp"
#include "heatmatch/match/margins/fuse_margins.hpp"
#include "heatmatch/match/margins/opening_margins.hpp"

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
    // An assumed pair that is insufficient counts as no pair for these poles.
    const auto no_better = [&opening](Margin& graded) {
        if (opening.unrated && *graded.headroom < 0.0)
            graded.headroom = std::min(*graded.headroom, -1.0);
    };
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
        no_better(margin);
        return margin;
    }
    margin.value = opening.amperes;
    margin.limit = opening.rated_a;
    margin.unit = unit::ampere;
    margin.said = say<"device.breaks_amperes">(with<"volts">(opening.volts, unit::volt),
                                               with<"factor">(lasting_current_factor));
    grade(margin);
    no_better(margin);
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

/// Direction of breaking: where the other strings can feed it backwards, one direction is a danger.
/// @cite dc-breaker-polarity
Margin polarity_margin(const Circuit& circuit, const PlacedDevice& placed) {
    Margin margin{.name = "polarity",
                  .subject = subject_of(placed),
                  .severity = Severity::none,
                  .consequence = Severity::caution,
                  .source = placed.control.provenance.source};
    const Control& control = placed.control;
    const bool protects = placed.device.duty == Duty::protects_a_string;
    if (protects && is_fuse(control)) {
        margin.said = say<"device.melts_either_way">();
        return margin;
    }
    if (!control.polarised.value_or(true)) {
        margin.said = say<"device.either_way">();
        return margin;
    }
    const bool fed = may_be_fed_backwards(circuit, placed);
    if (fed) margin.consequence = Severity::danger;
    if (control.polarised) {
        margin.severity = margin.consequence;
        margin.said = fed ? say<"device.polarised_in_string">() : say<"device.polarised">();
        if (fed) margin.headroom = -1.0;
        return margin;
    }
    margin.severity = fed ? Severity::warning : Severity::caution;
    margin.said =
        fed ? say<"device.polarity_assumed_in_string">() : say<"device.polarity_assumed">();
    margin.missing = {"control.polarised"};
    margin.assumed.push_back({.part = margin.subject,
                              .field = "polarised",
                              .value = sentence_of(Name{"yes"}),
                              .source = sentence_of(Name{"common-practice"})});
    return margin;
}

Margin body_margin(const PlacedDevice& placed, const Circuit& circuit) {
    const RunParts* run = run_of(circuit, placed);
    const bool known = run != nullptr && run->run.surroundings.air_c;
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

/// Poles for all circuits that pass through a device: through a common pole they would be one.
Margin shared_poles_margin(const PlacedDevice& placed) {
    const auto poles = poles_of(placed.control);
    const double needed = placed.circuits * placed.device.poles_used;
    Margin margin{
        .name = "shared poles",
        .subject = subject_of(placed),
        .value = needed,
        .said = say<"device.shared_poles">(with<"circuits">(static_cast<double>(placed.circuits))),
        .source = "common-practice"};
    if (poles) {
        margin.limit = static_cast<double>(*poles);
    } else {
        margin.said = say<"device.shared_poles_alone">(
            with<"circuits">(static_cast<double>(placed.circuits)));
        margin.missing = {"control.poles"};
    }
    grade(margin);
    // As many poles as are needed is no near miss.
    if (margin.severity == Severity::caution) margin.severity = Severity::none;
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

}  // namespace

std::vector<Margin> device_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    const OpeningSite at = opening_site(site);
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
            margins.push_back(polarity_margin(circuit, placed));
            continue;
        }
        if (placed.device.duty == Duty::carries_dc) {
            const RunParts* run = run_of(circuit, placed);
            const double share = run == nullptr ? 1.0 : circuit.current_share(run->run);
            margins.push_back(carrying_margin(placed, whole_a * share));
            margins.push_back(body_margin(placed, circuit));
            if (placed.circuits > 1) margins.push_back(shared_poles_margin(placed));
            continue;
        }
        if (placed.circuits > 1) margins.push_back(shared_poles_margin(placed));
        margins.push_back(breaking_margin(circuit, placed, at));
        margins.push_back(polarity_margin(circuit, placed));
        margins.push_back(body_margin(placed, circuit));
    }
    for (Margin& margin : opening_margins(circuit, at)) margins.push_back(std::move(margin));
    return margins;
}

}  // namespace heatmatch
