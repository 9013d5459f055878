#include "heatmatch/match/run_margins.hpp"

#include "heatmatch/heat/wire_temperature.hpp"

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
    std::optional<ConductorTemperature> temperature;
};

Margin voltage_margin(const RunView& run, const std::string& what, std::optional<double> rating,
                      const std::string& source) {
    Margin margin{
        .name = "cold voltage",
        .subject = run.subject,
        .value = run.cold_voltage_v,
        .limit = rating,
        .unit = unit::volt,
        .text = "At the record low the " + what + " stands at {value}; it is rated {limit}.",
        .source = source};
    if (!rating) {
        margin.text =
            "At the record low the " + what + " stands at {value}; its rated voltage is not known.";
        margin.missing = {"voltage_rating_v"};
    }
    grade(margin);
    return margin;
}

Margin code_current_margin(const RunView& run) {
    const Wire& wire = *run.parts.wire;
    constexpr double continuous = 1.25;
    Margin margin{.name = "run current",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .unit = unit::ampere,
                  .source = "nec-690-8"};
    if (!wire.ampacity_a) {
        margin.text = "The code's current for this wire is not known.";
        margin.missing = {"ampacity_a"};
        grade(margin);
        return margin;
    }
    const auto& air_c = run.parts.run.surroundings.air_c;
    const double corrected =
        corrected_ampacity_a(wire, air_c.value_or(*wire.ampacity_ambient_c)).value();
    // Both of the code's conditions as one: the table value carries 1.56 Isc, the corrected 1.25.
    const double by_table = *wire.ampacity_a / continuous;
    margin.value = continuous * run.code_isc_a;
    margin.limit = std::min(by_table, corrected);
    margin.text = margin.limit == by_table
                      ? "It has to carry {value} (1.25 times short-circuit current); the code's "
                        "table less another 1.25 allows {limit}."
                      : "It has to carry {value} (1.25 times short-circuit current); the code's "
                        "table, corrected for the heat around it, allows {limit}.";
    if (!air_c) margin.missing = {"surroundings.air_c"};
    if (*margin.limit <= 0.0) {
        margin.headroom = -1.0;
        margin.severity = margin.consequence;
        margin.text =
            "It is hotter around the wire than its table's conductor may get: by the code "
            "it may carry nothing, and it has to carry {value}.";
        return margin;
    }
    grade(margin);
    return margin;
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
                  .text = std::move(text),
                  .source = source};
    if (!run.temperature) {
        const bool cavity = run.parts.run.surroundings.kind == "cavity";
        margin.text = cavity ? "How hot a wire gets in a closed cavity is not part of this version."
                             : "State the temperature around \"" + run.parts.run.name +
                                   "\" to know how hot its wire gets.";
        margin.missing = {"surroundings.air_c"};
        return margin;
    }
    margin.value = run.temperature->conductor_c;
    margin.assumed = run.temperature->assumed;
    if (!limit) {
        margin.text = "In the \"" + run.parts.run.name + "\" the conductor reaches {value}; " +
                      missing_field + " is not known.";
        margin.missing = {missing_field};
        return margin;
    }
    const double around = *run.parts.run.surroundings.air_c;
    if (around >= *limit) {
        margin.headroom = (*limit - *margin.value) / (*limit - 20.0);
        margin.severity = consequence;
    } else {
        grade(margin, around);
    }
    if (run.temperature->runaway) {
        margin.text = "The wire of \"" + run.parts.run.name +
                      "\" finds no steady temperature at this current: it runs away.";
    }
    return margin;
}

Margin insulation_margin(const RunView& run) {
    const auto& insulation = run.parts.insulation;
    if (!insulation) {
        return not_assessed("insulation", run.subject, "The insulation is not known.",
                            {"insulation"});
    }
    return temperature_margin(
        run, "insulation",
        heat_text(run, insulation->family + " insulation melts or chars above "
                                            "its {limit}."),
        Severity::danger, insulation->limit_c, "limit_c", insulation->provenance.source);
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
        run, "joint", heat_text(run, connector->label + " fails above {limit}."), Severity::danger,
        connector->limit_c, "limit_c", connector->provenance.source);
}

Margin sunlight_margin(const RunView& run) {
    const auto& resistant = run.parts.wire->sunlight_resistant;
    Margin margin{.name = "sunlight",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .source = "nec-310"};
    if (!resistant) {
        margin.text = "Whether the jacket stands sunlight is not known: look for the print on it.";
        margin.missing = {"sunlight_resistant"};
        return margin;
    }
    margin.severity = *resistant ? Severity::none : Severity::warning;
    margin.text = *resistant ? "The jacket is marked for sunlight."
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
    margin.text = insulation.limit_wet_c
                      ? "The insulation is rated for wet places."
                      : "The insulation has no rating for wet places: it soaks and leaks.";
    return margin;
}

}  // namespace

std::vector<Margin> run_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    const double sun = site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    for (const RunParts& parts : circuit.runs) {
        const std::string subject = "run \"" + parts.run.name + '"';
        if (!parts.wire) {
            margins.push_back(not_assessed("insulation", subject,
                                           "No wire of the catalog was found that would do, or the "
                                           "temperature around it is not stated.",
                                           {"wire", "surroundings.air_c"}));
            continue;
        }
        const double isc = circuit.short_circuit_current_a() * circuit.current_share(parts.run);
        const Insulation* insulation = parts.insulation ? &*parts.insulation : nullptr;
        const RunView run{
            parts,
            subject,
            circuit.cold_voltage_v(),
            isc * sun,
            isc,
            site.wet,
            conductor_temperature(*parts.wire, insulation, isc * sun, parts.run.surroundings)};
        margins.push_back(voltage_margin(run, "wire", parts.wire->voltage_rating_v,
                                         parts.wire->provenance.source));
        if (parts.connector) {
            margins.push_back(voltage_margin(run, "joint", parts.connector->voltage_rating_v,
                                             parts.connector->provenance.source));
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
