#include "heatmatch/match/margins/run_margins.hpp"

#include "insulation_limit.hpp"
#include "run_view.hpp"
#include "said.hpp"
#include "sentences_of_runs.hpp"

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

using margins_sentences::of_runs::say;

namespace {

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
        if (run.in_bed() && run.at_element) {
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

Margin insulation_margin(const RunView& run) {
    const auto& insulation = run.parts.insulation;
    if (!insulation) {
        return not_assessed("insulation", run.subject, say<"run.insulation_unknown">(),
                            {"insulation"});
    }
    const InsulationLimit limit = insulation_limit(run.circuit, run.parts, run.site);
    const std::string& family = insulation->family;
    Margin margin = temperature_margin(
        run, "insulation",
        limit.soaked ? say<"run.insulation_wet">(with<"family">(family),
                                                 with<"dry">(insulation->limit_c, unit::celsius))
                     : say<"run.insulation">(with<"family">(family)),
        Severity::danger, limit.limit_c, "limit_c", insulation->provenance.source);
    if (!margin.value || margin.severity == Severity::danger) return margin;
    if (limit.wet_unknown) {
        margin.severity = Severity::not_assessed;
        margin.headroom.reset();
        margin.said = heat_said(run, say<"run.insulation_wet_unknown">(with<"family">(family)));
        margin.missing = {"limit_wet_c"};
    } else if (limit.wet_c && *margin.value > *limit.wet_c) {
        margin.severity = Severity::caution;
        add(margin, say<"run.insulation_dries">(with<"wet">(*limit.wet_c, unit::celsius)));
    }
    return margin;
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

Margin joint_voltage_margin(const RunView& run) {
    const auto& connector = run.parts.connector;
    if (!connector) {
        return not_assessed("joint voltage", run.subject, say<"run.joint_unknown">(),
                            {"connector"});
    }
    return voltage_margin(run, "joint voltage", say<"run.joint">(), connector->voltage_rating_v,
                          connector->provenance.source);
}

Margin joint_current_margin(const RunView& run) {
    if (!run.parts.connector) {
        Margin unknown =
            not_assessed("joint current", run.subject, say<"run.joint_unknown">(), {"connector"});
        unknown.consequence = Severity::warning;
        return unknown;
    }
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

/// Lists the margins of the run if it had a wire.
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
    for (const char* name :
         {"cold voltage", "joint voltage", "joint current", "run current", "insulation", "plating",
          "joint", "sunlight", "wet place", "placing"}) {
        margins.push_back(not_assessed(name, subject, say<"run.no_wire">(), {"wire"}));
    }
}

RunView view_of(const Circuit& circuit, const Site& site, const RunParts& parts) {
    const double sun = site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    const double isc = circuit.short_circuit_current_a() * circuit.current_share(parts.run);
    const bool buried = parts.run.surroundings.kind == SurroundingsKind::buried;
    return {.circuit = circuit,
            .site = site,
            .parts = parts,
            .subject = "run \"" + parts.run.name + '"',
            .cold_voltage_v = circuit.cold_voltage_v(),
            .current_a = isc * sun,
            .code_isc_a = isc,
            .wet = site.counts_as_wet() || buried,
            .at_element = circuit.run_at_element() == &parts,
            .temperature = parts.temperature(isc * sun)};
}

void add_margins(std::vector<Margin>& margins, const Circuit& circuit, const Site& site,
                 const RunParts& parts) {
    if (!parts.wire) {
        add_without_wire(margins, parts, "run \"" + parts.run.name + '"');
        return;
    }
    const RunView run = view_of(circuit, site, parts);
    margins.push_back({.name = "wire",
                       .subject = run.subject,
                       .severity = Severity::none,
                       .said = say<"run.laid">(),
                       .source = "common-practice"});
    margins.push_back(voltage_margin(run, "cold voltage", say<"run.wire">(),
                                     parts.wire->voltage_rating_v, parts.wire->provenance.source));
    margins.push_back(joint_voltage_margin(run));
    margins.push_back(joint_current_margin(run));
    margins.push_back(run_current_margin(run));
    margins.push_back(insulation_margin(run));
    margins.push_back(plating_margin(run));
    margins.push_back(joint_margin(run));
    margins.push_back(sunlight_margin(run));
    margins.push_back(wet_margin(run));
    margins.push_back(placing_margin(run));
}

}  // namespace

std::vector<Margin> run_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    for (const RunParts& parts : circuit.runs) add_margins(margins, circuit, site, parts);
    return margins;
}

std::vector<Margin> run_margins(const Circuit& circuit, const Site& site, const RunParts& run) {
    std::vector<Margin> margins;
    add_margins(margins, circuit, site, run);
    return margins;
}

bool wire_may_lie(const Circuit& circuit, const Site& site, const RunParts& run) {
    return run.wire && kind_may_lie(view_of(circuit, site, run));
}

}  // namespace heatmatch
