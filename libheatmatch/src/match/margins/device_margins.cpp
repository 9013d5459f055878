#include "heatmatch/match/margins/device_margins.hpp"

#include "sentences.hpp"

#include <algorithm>

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

using margins_sentences::say;

namespace {

/// Used where no direct-current rating is printed: 30 V, 1 A, as sheets of such parts often say.
constexpr DcRating unrated{.v_dc = 30.0, .a_dc = 1.0, .poles = 1};

std::string subject_of(const PlacedDevice& placed) {
    return "device \"" + placed.control.id + '"';
}

/// Volts a device breaks at, for the poles that are used.
double largest_voltage(const std::vector<DcRating>& ratings, int poles) {
    double largest = 0.0;
    for (const DcRating& rating : ratings) {
        if (rating.poles <= poles) largest = std::max(largest, rating.v_dc);
    }
    return largest;
}

Margin breaking_margin(const Circuit& circuit, const PlacedDevice& placed, double current_a) {
    const Control& control = placed.control;
    const double volts = circuit.cold_voltage_v();
    Margin margin{.name = "dc breaking",
                  .subject = subject_of(placed),
                  .value = volts,
                  .unit = unit::volt,
                  .source = control.provenance.source};
    if (control.ac_only.value_or(false)) {
        margin.limit = 0.0;
        margin.headroom = -1.0;
        margin.severity = Severity::danger;
        margin.said = say<"device.made_for_ac">();
        return margin;
    }
    std::vector<DcRating> ratings = control.dc_ratings;
    if (ratings.empty()) {
        ratings = {unrated};
        margin.assumed.push_back(
            {.part = margin.subject,
             .field = "dc_ratings",
             .value = say<"device.rating">(with<"volts">(unrated.v_dc, unit::volt),
                                           with<"amperes">(unrated.a_dc, unit::ampere)),
             .source = sentence_of(Name{"common-practice"})});
    }
    Control rated = control;
    rated.dc_ratings = ratings;
    const int poles = placed.device.poles_used;
    const auto amperes = breaking_current_a(rated, volts, poles);
    if (!amperes) {
        margin.limit = largest_voltage(ratings, poles);
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
    margin.value = current_a;
    margin.limit = *amperes;
    margin.unit = unit::ampere;
    margin.said = say<"device.breaks_amperes">(with<"volts">(volts, unit::volt),
                                               with<"factor">(lasting_current_factor));
    grade(margin);
    return margin;
}

Margin fuse_margin(const Circuit& circuit, const PlacedDevice& placed) {
    const Control& control = placed.control;
    Margin margin{.name = "string fuse",
                  .subject = subject_of(placed),
                  .value = table_current_factor * circuit.panel.i_sc_limit_a,
                  .unit = unit::ampere,
                  .source = "nec-690-9"};
    const auto amperes =
        breaking_current_a(control, circuit.cold_voltage_v(), placed.device.poles_used);
    if (!amperes) {
        margin.value = circuit.cold_voltage_v();
        margin.limit = largest_voltage(control.dc_ratings, placed.device.poles_used);
        margin.unit = unit::volt;
        margin.said = say<"device.fuse_volts">();
        if (*margin.limit <= 0.0) {
            margin.said = say<"device.fuse_without_rating">();
            margin.headroom = -1.0;
            margin.severity = Severity::danger;
            return margin;
        }
        grade(margin);
        return margin;
    }
    margin.consequence = Severity::caution;
    margin.limit = *amperes;
    margin.said = say<"device.fuse_amperes">(with<"factor">(table_current_factor));
    grade(margin);
    if (*margin.headroom >= 0.0) margin.severity = Severity::none;  // a tight fuse is a good one
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

bool opens_dc(const PlacedDevice& placed) {
    return placed.device.duty == Duty::breaks_dc && !placed.control.ac_only.value_or(false);
}

/// Something must be able to open the circuit by hand.
Margin disconnect_margin(const Circuit& circuit) {
    const bool breaks = std::any_of(circuit.devices.begin(), circuit.devices.end(), opens_dc);
    Margin margin{.name = "disconnect",
                  .subject = "circuit",
                  .consequence = Severity::warning,
                  .source = "iec-62548"};
    margin.severity = breaks ? Severity::none : Severity::warning;
    margin.said = breaks ? say<"device.disconnect">() : say<"device.no_disconnect">();
    return margin;
}

bool limits(const PlacedDevice& placed) {
    return placed.control.sense_high_c && stays_open(placed.control);
}

bool driven(const PlacedDevice& placed) {
    return opens_dc(placed) && placed.control.reset != ResetKind::by_hand;
}

/// A second, independent limit that does not reset by itself, and something it can open.
Margin independent_limit_margin(const Circuit& circuit) {
    const bool listed = std::any_of(circuit.devices.begin(), circuit.devices.end(), limits);
    const bool can_open = std::any_of(circuit.devices.begin(), circuit.devices.end(), driven);
    Margin margin{.name = "independent limit",
                  .subject = "circuit",
                  .severity = Severity::none,
                  .consequence = Severity::warning,
                  .said = say<"device.limit">(),
                  .source = "common-practice"};
    if (!listed) {
        margin.severity = Severity::warning;
        margin.said = say<"device.no_limit">();
    } else if (!can_open) {
        margin.severity = Severity::warning;
        margin.said = say<"device.limit_opens_nothing">();
    }
    return margin;
}

}  // namespace

bool has_independent_limit(const std::vector<PlacedDevice>& devices) {
    return std::any_of(devices.begin(), devices.end(), limits) &&
           std::any_of(devices.begin(), devices.end(), driven);
}

std::vector<Margin> device_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    const double sun = site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    const double whole_a = lasting_current_factor * circuit.short_circuit_current_a() * sun;
    for (const PlacedDevice& placed : circuit.devices) {
        const bool in_circuit = !placed.device.run.empty();
        if (placed.device.duty == Duty::senses_only) {
            if (in_circuit) margins.push_back(senses_in_circuit(placed));
            continue;
        }
        if (placed.device.duty == Duty::protects_a_string) {
            margins.push_back(fuse_margin(circuit, placed));
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
        // The branch that is opened last breaks the whole current; a string breaks its own.
        const bool of_string = known && run->run.carries == Carried::string;
        const double share = of_string ? circuit.current_share(run->run) : 1.0;
        margins.push_back(breaking_margin(circuit, placed, whole_a * share));
        margins.push_back(polarity_margin(placed));
        margins.push_back(body_margin(placed, circuit));
    }
    margins.push_back(disconnect_margin(circuit));
    margins.push_back(independent_limit_margin(circuit));
    return margins;
}

}  // namespace heatmatch
