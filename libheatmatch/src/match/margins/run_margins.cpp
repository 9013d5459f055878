#include "heatmatch/match/margins/run_margins.hpp"

#include "said.hpp"
#include "sentences_of_runs.hpp"

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

using margins_sentences::of_runs::say;

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

Margin voltage_margin(const RunView& run, const char* name, const Sentence& part,
                      std::optional<double> rating, const std::string& source) {
    Margin margin{.name = name,
                  .subject = run.subject,
                  .value = run.cold_voltage_v,
                  .limit = rating,
                  .unit = unit::volt,
                  .said = say<"run.voltage">(with<"part">(part)),
                  .source = source};
    if (!rating) {
        margin.said = say<"run.voltage_alone">(with<"part">(part));
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
                  .said = say<"run.table_current">(with<"factor">(table_current_factor)),
                  .source = "nec-690-8"};
    if (!wire.ampacity_a) {
        margin.value.reset();
        margin.said = say<"run.table_current_unknown">();
        margin.missing = {"ampacity_a"};
        return margin;
    }
    grade(margin);
    const auto& air_c = run.parts.run.surroundings.air_c;
    if (!air_c) {
        add(margin, say<"run.correction_needs_air">());
        margin.missing = {"surroundings.air_c"};
        return margin;
    }
    Margin corrected = margin;
    corrected.value = lasting_current_factor * run.code_isc_a;
    const auto& insulation = run.parts.insulation;
    const auto limit_c = insulation ? std::optional(insulation->limit_c) : std::nullopt;
    corrected.limit = *corrected_ampacity_a(wire, *air_c, limit_c);
    const bool limited = limit_c && *limit_c < wire.ampacity_conductor_c;
    corrected.said = say<"run.corrected_current">(
        with<"factor">(lasting_current_factor),
        with<"also">(limited ? say<"run.also_insulation">() : Sentence{}));
    if (*corrected.limit <= 0.0) {
        corrected.headroom = -1.0;
        corrected.severity = corrected.consequence;
        corrected.said = say<"run.hotter_than_allowed">();
        return corrected;
    }
    grade(corrected);
    return *corrected.headroom < *margin.headroom ? corrected : margin;
}

Sentence heat_said(const RunView& run, Sentence what) {
    return say<"run.heat">(with<"run">(run.parts.run.name), with<"what">(std::move(what)));
}

Margin temperature_margin(const RunView& run, const std::string& name, Sentence what,
                          Severity consequence, std::optional<double> limit,
                          const std::string& missing_field, const std::string& source) {
    Margin margin{.name = name,
                  .subject = run.subject,
                  .consequence = consequence,
                  .limit = limit,
                  .unit = unit::celsius,
                  .said = heat_said(run, std::move(what)),
                  .source = source};
    if (!run.temperature) {
        if (run.in_bed) {
            margin.severity = Severity::none;
            margin.said = say<"run.judged_in_bed">();
            return margin;
        }
        margin.said = say<"run.state_air">(with<"run">(run.parts.run.name));
        margin.missing = {"surroundings.air_c"};
        return margin;
    }
    margin.value = run.temperature->conductor_c;
    margin.assumed = run.temperature->assumed;
    if (!limit) {
        margin.said = heat_said(run, say<"run.field_unknown">(with<"field">(missing_field)));
        margin.missing = {missing_field};
        return margin;
    }
    grade(margin, room_c);
    if (run.temperature->runaway) {
        margin.said = say<"run.runs_away">(with<"run">(run.parts.run.name));
    }
    return margin;
}

/// Below it a place counts as wet where the site is; hotter ones dry out.
constexpr double driest_wet_c = 90.0;

Margin insulation_margin(const RunView& run) {
    const auto& insulation = run.parts.insulation;
    if (!insulation) {
        return not_assessed("insulation", run.subject, say<"run.insulation_unknown">(),
                            {"insulation"});
    }
    const double around = run.parts.run.surroundings.air_c.value_or(room_c);
    const bool wet = run.wet && around < driest_wet_c && insulation->limit_wet_c;
    const std::string& family = insulation->family;
    return temperature_margin(run, "insulation",
                              wet ? say<"run.insulation_wet">(with<"family">(family))
                                  : say<"run.insulation">(with<"family">(family)),
                              Severity::danger, wet ? insulation->limit_wet_c : insulation->limit_c,
                              "limit_c", insulation->provenance.source);
}

Margin plating_margin(const RunView& run) {
    const Wire& wire = *run.parts.wire;
    return temperature_margin(run, "plating", metal_limit(wire), Severity::warning,
                              conductor_limit_c(wire), "plating", "astm-b33");
}

Margin joint_margin(const RunView& run) {
    const auto& connector = run.parts.connector;
    if (!connector) {
        return not_assessed("joint", run.subject, say<"run.joint_unknown">(), {"connector"});
    }
    return temperature_margin(run, "joint", say<"run.joint_heat">(with<"joint">(connector->label)),
                              Severity::danger, connector->limit_c, "limit_c",
                              connector->provenance.source);
}

Margin joint_current_margin(const RunView& run) {
    const Connector& connector = *run.parts.connector;
    Margin margin{.name = "joint current",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .value = lasting_current_factor * run.code_isc_a,
                  .limit = connector.current_rating_a,
                  .unit = unit::ampere,
                  .said = say<"run.joint_current">(with<"factor">(lasting_current_factor)),
                  .source = connector.provenance.source};
    if (!margin.limit) {
        margin.said = say<"run.joint_current_alone">();
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
        margin.said = say<"run.sunlight_unknown">();
        margin.missing = {"sunlight_resistant"};
        return margin;
    }
    margin.severity = *resistant ? Severity::none : Severity::warning;
    margin.said = *resistant ? say<"run.sunlight">() : say<"run.no_sunlight">();
    return margin;
}

Margin wet_margin(const RunView& run) {
    const Insulation& insulation = *run.parts.insulation;
    Margin margin{.name = "wet place",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .source = insulation.provenance.source};
    margin.severity = insulation.limit_wet_c ? Severity::none : Severity::warning;
    margin.said = insulation.limit_wet_c ? say<"run.wet">() : say<"run.not_wet">();
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
                 .said = say<"run.no_wire_does">(with<"run">(parts.run.name)),
                 .source = "common-practice"};
    if (!stated) {
        const Amount nothing{0.0, unit::ohm};
        found = not_assessed(
            "wire", subject,
            say<"run.state_air_to_choose">(with<"run">(parts.run.name), with<"ohms">(nothing)),
            {"surroundings.air_c"});
        found.assumed.push_back(
            {subject, "ohms of its wire", sentence_of(nothing), say<"run.no_wire_chosen">()});
    }
    margins.push_back(found);
    for (const char* name : {"cold voltage", "run current", "insulation", "plating", "joint"}) {
        margins.push_back(not_assessed(name, subject, say<"run.no_wire">(), {"wire"}));
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
        const bool in_bed = &parts == tail && parts.run.surroundings.kind == SurroundingsKind::bed;
        const RunView run{parts,
                          subject,
                          circuit.cold_voltage_v(),
                          isc * sun,
                          isc,
                          site.counts_as_wet(),
                          in_bed,
                          parts.temperature(isc * sun)};
        margins.push_back(voltage_margin(run, "cold voltage", say<"run.wire">(),
                                         parts.wire->voltage_rating_v,
                                         parts.wire->provenance.source));
        if (parts.connector) {
            margins.push_back(voltage_margin(run, "joint voltage", say<"run.joint">(),
                                             parts.connector->voltage_rating_v,
                                             parts.connector->provenance.source));
            margins.push_back(joint_current_margin(run));
        }
        margins.push_back(code_current_margin(run));
        margins.push_back(insulation_margin(run));
        margins.push_back(plating_margin(run));
        margins.push_back(joint_margin(run));
        if (parts.run.surroundings.kind == SurroundingsKind::sunlit)
            margins.push_back(sunlight_margin(run));
        const bool weather = parts.run.surroundings.kind != SurroundingsKind::bed;
        if (site.counts_as_wet() && weather && parts.insulation) margins.push_back(wet_margin(run));
    }
    return margins;
}

}  // namespace heatmatch
