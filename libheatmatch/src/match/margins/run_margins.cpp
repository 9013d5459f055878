#include "heatmatch/match/margins/run_margins.hpp"

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

namespace {

/// One run as its margins see it.
struct RunView {
    const RunParts& parts;
    std::string subject;
    double cold_voltage_v;
    double current_a;   //!< short-circuit current in the brightest sun
    double code_isc_a;  //!< short-circuit current at 1000 W/m2, as codes count
    bool wet;
    bool in_bed;  //!< lies in the bed at the element: judged as hot tail
    std::optional<ConductorTemperature> temperature;
};

Margin voltage_margin(const RunView& run, const char* name, const std::string& what,
                      std::optional<double> rating, const std::string& source) {
    Margin margin{
        .name = name,
        .subject = run.subject,
        .value = run.cold_voltage_v,
        .limit = rating,
        .unit = unit::volt,
        .said = "At the record low the " + what + " stands at {value}; it is rated {limit}.",
        .source = source};
    if (!rating) {
        margin.said =
            "At the record low the " + what + " stands at {value}; its rated voltage is not known.";
        margin.missing = {"voltage_rating_v"};
    }
    grade(margin);
    return margin;
}

/// The code has two conditions: the table carries 1.56 Isc, the table corrected for heat 1.25 Isc.
Margin code_current_margin(const RunView& run) {
    const Wire& wire = *run.parts.wire;
    Margin margin{.name = "run current",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .value = table_current_factor * run.code_isc_a,
                  .limit = wire.ampacity_a,
                  .unit = unit::ampere,
                  .said =
                      "The code's table must show {value} for it (1.56 times short-circuit "
                      "current); it shows {limit}.",
                  .source = "nec-690-8"};
    if (!wire.ampacity_a) {
        margin.value.reset();
        margin.said = "The code's current for this wire is not known.";
        margin.missing = {"ampacity_a"};
        return margin;
    }
    grade(margin);
    const auto& air_c = run.parts.run.surroundings.air_c;
    if (!air_c) {
        margin.said += " The correction for the heat around it needs its temperature.";
        margin.missing = {"surroundings.air_c"};
        return margin;
    }
    Margin corrected = margin;
    corrected.value = lasting_current_factor * run.code_isc_a;
    const auto& insulation = run.parts.insulation;
    const auto limit_c = insulation ? std::optional(insulation->limit_c) : std::nullopt;
    corrected.limit = *corrected_ampacity_a(wire, *air_c, limit_c);
    const bool limited = limit_c && *limit_c < wire.ampacity_conductor_c;
    corrected.said =
        std::string(
            "It has to carry {value} (1.25 times short-circuit current); the code's table, "
            "corrected for the heat around it") +
        (limited ? " and its insulation's lower limit" : "") + ", allows {limit}.";
    if (*corrected.limit <= 0.0) {
        corrected.headroom = -1.0;
        corrected.severity = corrected.consequence;
        corrected.said =
            "It is hotter around the wire than its conductor may get: by the code it may carry "
            "nothing, and it has to carry {value}.";
        return corrected;
    }
    grade(corrected);
    return *corrected.headroom < *margin.headroom ? corrected : margin;
}

std::string heat_text(const RunView& run, const std::string& what) {
    return "In the \"" + run.parts.run.name + "\" the conductor reaches {value}; " + what;
}

Margin temperature_margin(const RunView& run, const std::string& name, std::string text,
                          Severity consequence, std::optional<double> limit,
                          const std::string& missing_field, const std::string& source) {
    Margin margin{.name = name,
                  .subject = run.subject,
                  .consequence = consequence,
                  .limit = limit,
                  .unit = unit::celsius,
                  .said = std::move(text),
                  .source = source};
    if (!run.temperature) {
        if (run.in_bed) {
            margin.severity = Severity::none;
            margin.said = "It lies in the bed at the element: judged there, as hot tail.";
            return margin;
        }
        margin.said = "State the temperature around \"" + run.parts.run.name +
                      "\" to know how hot its wire gets.";
        margin.missing = {"surroundings.air_c"};
        return margin;
    }
    margin.value = run.temperature->conductor_c;
    margin.assumed = run.temperature->assumed;
    if (!limit) {
        margin.said = "In the \"" + run.parts.run.name + "\" the conductor reaches {value}; " +
                      missing_field + " is not known.";
        margin.missing = {missing_field};
        return margin;
    }
    grade(margin, room_c);
    if (run.temperature->runaway) {
        margin.said = "The wire of \"" + run.parts.run.name +
                      "\" finds no steady temperature at this current: it runs away.";
    }
    return margin;
}

/// Below it a place counts as wet where the site is; hotter ones dry out.
constexpr double driest_wet_c = 90.0;

Margin insulation_margin(const RunView& run) {
    const auto& insulation = run.parts.insulation;
    if (!insulation) {
        return not_assessed("insulation", run.subject, "The insulation is not known.",
                            {"insulation"});
    }
    const double around = run.parts.run.surroundings.air_c.value_or(room_c);
    const bool wet = run.wet && around < driest_wet_c && insulation->limit_wet_c;
    const std::string what = insulation->family + " insulation is rated {limit}" +
                             (wet ? " where wet, and soaks and ages early beyond it."
                                  : " and melts or chars beyond it.");
    return temperature_margin(run, "insulation", heat_text(run, what), Severity::danger,
                              wet ? insulation->limit_wet_c : insulation->limit_c, "limit_c",
                              insulation->provenance.source);
}

Margin plating_margin(const RunView& run) {
    const Wire& wire = *run.parts.wire;
    const std::string metal = wire.plating == "bare" ? "bare " + wire.conductor
                                                     : wire.plating + "-plated " + wire.conductor;
    return temperature_margin(run, "plating",
                              heat_text(run, metal + " oxidises above {limit} and ages early."),
                              Severity::warning, conductor_limit_c(wire), "plating", "astm-b33");
}

Margin joint_margin(const RunView& run) {
    const auto& connector = run.parts.connector;
    if (!connector) {
        return not_assessed("joint", run.subject,
                            "What joins this run at its ends is not known; joints fail first.",
                            {"connector"});
    }
    return temperature_margin(
        run, "joint", heat_text(run, "its joint (" + connector->label + ") is rated {limit}."),
        Severity::danger, connector->limit_c, "limit_c", connector->provenance.source);
}

Margin joint_current_margin(const RunView& run) {
    const Connector& connector = *run.parts.connector;
    Margin margin{.name = "joint current",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .value = lasting_current_factor * run.code_isc_a,
                  .limit = connector.current_rating_a,
                  .unit = unit::ampere,
                  .said =
                      "Its joints have to carry {value} (1.25 times short-circuit current); they "
                      "are rated {limit}.",
                  .source = connector.provenance.source};
    if (!margin.limit) {
        margin.said = "Its joints have to carry {value}; their rated current is not known.";
        margin.missing = {"current_rating_a"};
    }
    grade(margin);
    return margin;
}

Margin sunlight_margin(const RunView& run) {
    const auto& resistant = run.parts.wire->sunlight_resistant;
    Margin margin{.name = "sunlight",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .source = "nec-310"};
    if (!resistant) {
        margin.said = "Whether the jacket stands sunlight is not known: look for the print on it.";
        margin.missing = {"sunlight_resistant"};
        return margin;
    }
    margin.severity = *resistant ? Severity::none : Severity::warning;
    margin.said = *resistant ? "The jacket is marked for sunlight."
                             : "The jacket is not marked for sunlight: it cracks within years.";
    return margin;
}

Margin wet_margin(const RunView& run) {
    const Insulation& insulation = *run.parts.insulation;
    Margin margin{.name = "wet place",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .source = insulation.provenance.source};
    margin.severity = insulation.limit_wet_c ? Severity::none : Severity::warning;
    margin.said = insulation.limit_wet_c
                      ? "The insulation is rated for wet places."
                      : "The insulation has no rating for wet places: it soaks and leaks.";
    return margin;
}

/// Lists what would have been looked at, had the run a wire.
void add_without_wire(std::vector<Margin>& margins, const RunParts& parts,
                      const std::string& subject) {
    const bool stated = parts.run.surroundings.air_c.has_value();
    Margin found{.name = "wire",
                 .subject = subject,
                 .severity = Severity::danger,
                 .headroom = -1.0,
                 .said = "No wire of the catalog does in \"" + parts.run.name +
                         "\": each lacks volts, current or heat resistance there.",
                 .source = "common-practice"};
    if (!stated) {
        found = not_assessed("wire", subject,
                             "State the temperature around \"" + parts.run.name +
                                 "\" to have a wire chosen; it counts as 0 ohm until then.",
                             {"surroundings.air_c"});
        found.assumed.push_back({subject, "ohms of its wire", "0 ohm", "no wire chosen"});
    }
    margins.push_back(found);
    for (const char* name : {"cold voltage", "run current", "insulation", "plating", "joint"}) {
        margins.push_back(not_assessed(name, subject, "The run has no wire.", {"wire"}));
    }
}

}  // namespace

std::vector<Margin> run_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    const double sun = site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    const RunParts* tail = circuit.run_at_element();
    for (const RunParts& parts : circuit.runs) {
        const std::string subject = "run \"" + parts.run.name + '"';
        if (!parts.wire) {
            add_without_wire(margins, parts, subject);
            continue;
        }
        const double isc = circuit.short_circuit_current_a() * circuit.current_share(parts.run);
        const bool in_bed = &parts == tail && parts.run.surroundings.kind == "bed";
        const RunView run{parts,    subject, circuit.cold_voltage_v(),    isc * sun, isc,
                          site.wet, in_bed,  parts.temperature(isc * sun)};
        margins.push_back(voltage_margin(run, "cold voltage", "wire", parts.wire->voltage_rating_v,
                                         parts.wire->provenance.source));
        if (parts.connector) {
            margins.push_back(voltage_margin(run, "joint voltage", "joint",
                                             parts.connector->voltage_rating_v,
                                             parts.connector->provenance.source));
            margins.push_back(joint_current_margin(run));
        }
        margins.push_back(code_current_margin(run));
        margins.push_back(insulation_margin(run));
        margins.push_back(plating_margin(run));
        margins.push_back(joint_margin(run));
        if (parts.run.surroundings.kind == "sunlit") margins.push_back(sunlight_margin(run));
        const bool weather = parts.run.surroundings.kind != "bed";
        if (site.wet && weather && parts.insulation) margins.push_back(wet_margin(run));
    }
    return margins;
}

}  // namespace heatmatch
