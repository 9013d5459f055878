#include "heatmatch/match/margins/device_margins.hpp"

#include <algorithm>

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

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
        margin.said =
            "Made for alternating current only: on {value} direct current its contacts "
            "hold an arc or weld shut. It must not break this circuit.";
        return margin;
    }
    std::vector<DcRating> ratings = control.dc_ratings;
    if (ratings.empty()) {
        ratings = {unrated};
        margin.assumed.push_back({.part = margin.subject,
                                  .field = "dc_ratings",
                                  .value = "30 V, 1 A",
                                  .source = "common-practice"});
    }
    Control rated = control;
    rated.dc_ratings = ratings;
    const int poles = placed.device.poles_used;
    const auto amperes = breaking_current_a(rated, volts, poles);
    if (!amperes) {
        margin.limit = largest_voltage(ratings, poles);
        margin.said =
            "It has to break {value} of direct current and is rated for at most {limit} "
            "with the poles used.";
        if (*margin.limit <= 0.0) {
            margin.said =
                "No printed pair of volts and amperes is for the poles used; it has to "
                "break {value}.";
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
    margin.said = "At the cold voltage of " + format_number(volts, 3) +
                  " V it has to break {value} (1.25 times short-circuit current); its printed pair "
                  "allows {limit}.";
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
        margin.said = "The fuse must clear {value} of direct current and is rated for {limit}.";
        if (*margin.limit <= 0.0) {
            margin.said = "The fuse has no direct-current rating; the string stands at {value}.";
            margin.headroom = -1.0;
            margin.severity = Severity::danger;
            return margin;
        }
        grade(margin);
        return margin;
    }
    margin.consequence = Severity::caution;
    margin.limit = *amperes;
    margin.said =
        "A fuse below {value} (1.56 times the string's short-circuit current) would blow in "
        "bright sun; this one is {limit}. It does not clear a short of the panels.";
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
                  .said =
                      "It has to carry {value} (1.25 times short-circuit current); its contacts "
                      "or shunt are rated {limit}. Opened under load it may arc.",
                  .source = control.provenance.source};
    for (const DcRating& rating : control.dc_ratings) {
        margin.limit = std::max(margin.limit.value_or(0.0), rating.a_dc);
    }
    if (!margin.limit) margin.limit = control.a_ac;
    if (!margin.limit) {
        margin.said = "It has to carry {value}; what its contacts or shunt carry is not known.";
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
    margin.said = polarised
                      ? "It breaks in one direction only: wire plus and minus, line and load as "
                        "marked, or it burns when opened."
                      : "It breaks either way round.";
    if (!placed.control.polarised) {
        margin.assumed.push_back({.part = margin.subject,
                                  .field = "polarised",
                                  .value = "yes",
                                  .source = "common-practice"});
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
                  .said = "Around it is {value}; its own body may reach {limit}.",
                  .source = placed.control.provenance.source};
    if (known) margin.value = run->run.surroundings.air_c;
    if (!known || !margin.limit) {
        margin.said = "How warm its own body gets is not known.";
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
                  .said = "It only senses, yet it sits in the run \"" + placed.device.run +
                          "\": let it drive a contactor that is rated for this direct current.",
                  .source = "common-practice"};
    return margin;
}

bool opens_dc(const PlacedDevice& placed) {
    return placed.device.duty == "breaks dc" && !placed.control.ac_only.value_or(false);
}

/// Something must be able to open the circuit by hand.
Margin disconnect_margin(const Circuit& circuit) {
    const bool breaks = std::any_of(circuit.devices.begin(), circuit.devices.end(), opens_dc);
    Margin margin{.name = "disconnect",
                  .subject = "circuit",
                  .consequence = Severity::warning,
                  .source = "iec-62548"};
    margin.severity = breaks ? Severity::none : Severity::warning;
    margin.said = breaks
                      ? "A device that breaks direct current is listed."
                      : "No device that can break direct current is listed: pulling a plug under "
                        "load draws an arc.";
    return margin;
}

bool limits(const PlacedDevice& placed) {
    const std::string& reset = placed.control.reset;
    const bool stays_open = reset == "manual" || reset == "latching" || reset == "replace";
    return placed.control.sense_high_c && stays_open;
}

bool driven(const PlacedDevice& placed) {
    return opens_dc(placed) && placed.control.reset != "by hand";
}

/// A second, independent limit that does not reset by itself, and something it can open.
Margin independent_limit_margin(const Circuit& circuit) {
    const bool listed = std::any_of(circuit.devices.begin(), circuit.devices.end(), limits);
    const bool can_open = std::any_of(circuit.devices.begin(), circuit.devices.end(), driven);
    Margin margin{.name = "independent limit",
                  .subject = "circuit",
                  .severity = Severity::none,
                  .consequence = Severity::warning,
                  .said =
                      "An over-temperature limit that does not reset by itself is listed, and a "
                      "device it can open. Test that it does.",
                  .source = "common-practice"};
    if (!listed) {
        margin.severity = Severity::warning;
        margin.said =
            "No independent over-temperature limit that stays open is listed: a welded "
            "thermostat would go unnoticed.";
    } else if (!can_open) {
        margin.severity = Severity::warning;
        margin.said =
            "An over-temperature limit is listed, but nothing that it can open: only a "
            "hand-operated device breaks the direct current.";
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
        if (placed.device.duty == "senses only") {
            if (in_circuit) margins.push_back(senses_in_circuit(placed));
            continue;
        }
        if (placed.device.duty == "protects a string") {
            margins.push_back(fuse_margin(circuit, placed));
            continue;
        }
        const auto run = std::find_if(
            circuit.runs.begin(), circuit.runs.end(),
            [&placed](const RunParts& parts) { return parts.run.name == placed.device.run; });
        const bool known = run != circuit.runs.end();
        if (placed.device.duty == "carries dc") {
            const double share = known ? circuit.current_share(run->run) : 1.0;
            margins.push_back(carrying_margin(placed, whole_a * share));
            margins.push_back(body_margin(placed, circuit));
            continue;
        }
        // The branch that is opened last breaks the whole current; a string breaks its own.
        const bool of_string = known && run->run.carries == "string";
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
