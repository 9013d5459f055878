#include "heatmatch/match/margins/bank_margins.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

namespace heatmatch {

using margins_sentences::say;

namespace {

std::string subject_of(const Element& element) {
    return "element \"" + element.id + '"';
}

bool stands_in_liquid(const Circuit& circuit) {
    return circuit.heat && circuit.heat->liquid;
}

/// Power of an element against its rating, which applies in the medium for which it is made.
Margin power_margin(const Circuit& circuit, const Extremes& extremes) {
    const Bank& bank = circuit.bank;
    Margin margin{
        .name = "element power",
        .subject = subject_of(bank.element),
        .value = extremes.element_power_w,
        .limit = bank_limits(bank, circuit.heat.get()).element_power_w,
        .unit = unit::watt,
        .said = stands_in_liquid(circuit) ? say<"bank.power_rated">() : say<"bank.power">(),
        .source = bank.element.provenance.source,
        .assumed = bank.each.assumed};
    if (!margin.limit) {
        margin.said = say<"bank.power_alone">();
        margin.missing = {"rated_w"};
    }
    grade(margin);
    if (!margin.limit || !heats_liquid(bank, circuit.heat.get())) return margin;
    const double rated_w = *bank.element.rated_w;
    const bool above = extremes.element_power_w > rated_share_in_liquid * rated_w;
    const Amount rated{rated_w, unit::watt};
    margin.said = above ? say<"bank.power_above_in_liquid">(with<"rated">(rated))
                        : say<"bank.power_in_liquid">(with<"rated">(rated));
    if (margin.severity != Severity::danger) {
        margin.severity = above ? Severity::warning : Severity::none;
    }
    return margin;
}

Margin share_voltage_margin(const Bank& bank, const Extremes& extremes) {
    Margin margin{.name = "element voltage",
                  .subject = subject_of(bank.element),
                  .consequence = Severity::warning,
                  .value = extremes.element_voltage_v,
                  .limit = bank.element.rated_v,
                  .unit = unit::volt,
                  .said = say<"bank.voltage">(),
                  .source = bank.element.provenance.source,
                  .assumed = bank.each.assumed};
    if (!margin.limit) {
        margin.said = say<"bank.voltage_alone">();
        margin.missing = {"rated_v"};
    }
    grade(margin);
    return margin;
}

Margin sheath_voltage_margin(const Circuit& circuit) {
    const Element& element = circuit.bank.element;
    Margin margin{.name = "sheath voltage",
                  .subject = subject_of(element),
                  .value = circuit.cold_voltage_v(),
                  .limit = bank_limits(circuit.bank, nullptr).sheath_voltage_v,
                  .unit = unit::volt,
                  .said = say<"bank.sheath_voltage">(with<"peak">(std::numbers::sqrt2)),
                  .source = "common-practice"};
    if (!margin.limit) {
        margin.said = say<"bank.sheath_voltage_alone">();
        margin.missing = {"rated_v"};
    } else if (element.rated_dc.value_or(false)) {
        margin.said = say<"bank.sheath_voltage_dc">();
    } else if (!element.rated_dc) {
        margin.missing = {"rated_dc"};
    }
    if (is_bare(circuit.bank)) {
        margin.said = stands_in_liquid(circuit) ? say<"bank.bare_voltage_in_liquid">()
                                                : say<"bank.bare_voltage">();
        margin.source = "iec-60364-4-41";
        margin.missing.clear();
    }
    grade(margin);
    const bool above_rating = element.rated_v && circuit.cold_voltage_v() > *element.rated_v;
    if (above_rating && margin.severity != Severity::not_assessed) {
        // It would be a danger if rated for DC: with an unknown rating it is more than a caution.
        margin.severity = std::max(
            margin.severity, element.rated_dc == false ? Severity::caution : Severity::warning);
    }
    return margin;
}

Margin survivor_margin(const Bank& bank, const Extremes& extremes) {
    Margin margin{.name = "survivor power",
                  .subject = subject_of(bank.element),
                  .consequence = Severity::warning,
                  .value = extremes.survivor_power_w,
                  .limit = bank.element.rated_w,
                  .unit = unit::watt,
                  .said = say<"bank.survivor">(),
                  .source = bank.element.provenance.source,
                  .assumed = bank.each.assumed};
    if (bank.hookup.parallel == 1 && extremes.survivor_power_w <= 0.0) {
        margin.said = say<"bank.one_branch">();
    } else if (!margin.limit) {
        margin.said = say<"bank.survivor_alone">();
    }
    if (!margin.limit) margin.missing = {"rated_w"};
    grade(margin);
    return margin;
}

/// Insulation between coil and sheath: at least 1 Mohm in service, 20 Mohm when new.
Margin earth_fault_margin(const Bank& bank, bool in_liquid) {
    const Element& element = bank.element;
    constexpr double new_mohm = 20.0;
    constexpr double tester_v = 500.0;
    Margin margin{.name = "earth fault",
                  .subject = subject_of(element),
                  .consequence = Severity::warning,
                  .value = element.insulation_resistance_mohm,
                  .limit = 1.0,
                  .unit = unit::megohm,
                  .said = say<"bank.insulation">(),
                  .source = "common-practice"};
    if (is_bare(bank)) {
        margin.value.reset();
        margin.limit.reset();
        margin.severity = Severity::warning;
        margin.said = in_liquid ? say<"bank.bare_wire_in_liquid">() : say<"bank.bare_wire">();
        return margin;
    }
    if (!margin.value) {
        const Amount tester{tester_v, unit::volt};
        const Amount fresh{new_mohm, unit::megohm};
        margin.said =
            in_liquid
                ? say<"bank.insulation_alone_in_liquid">(with<"volts">(tester), with<"new">(fresh))
                : say<"bank.insulation_alone">(with<"volts">(tester), with<"new">(fresh));
        margin.missing = {"insulation_resistance_mohm"};
    } else if (*margin.value > new_mohm) {
        margin.severity = Severity::none;
        margin.headroom = 1.0;
        return margin;
    }
    grade_from_below(margin, new_mohm);
    return margin;
}

Margin built_in_margin(const Element& element) {
    Margin margin{.name = "built-in control",
                  .subject = subject_of(element),
                  .consequence = Severity::warning,
                  .source = element.provenance.source};
    if (!element.built_in_ac_control) {
        margin.said = say<"bank.built_in_unknown">();
        margin.missing = {"built_in_ac_control"};
        return margin;
    }
    const bool inside = *element.built_in_ac_control;
    margin.severity = inside ? Severity::warning : Severity::none;
    margin.said = inside ? say<"bank.built_in">() : say<"bank.nothing_built_in">();
    return margin;
}

/// Share of the short-circuit current at 1000 W/m2 and 45 °C: near 1 a shaded cell has the highest
/// reverse load.
Margin shade_margin(const Circuit& circuit) {
    constexpr double summer_cell_c = 45.0;
    // At the lowest wire resistance: heating of a thin wire must not reduce the load on a shaded
    // cell.
    const double ohm = circuit.bank.typical_ohm() + circuit.wire_ohm_at(room_c);
    const auto share_of_curve = [ohm](const auto& curve) {
        return curve.into_resistance(ohm).current_a / curve.short_circuit_current_a();
    };
    const double share = circuit.unlike
                             ? share_of_curve(circuit.unlike->curve(
                                   PanelState::today, stc_irradiance_w_m2, summer_cell_c))
                             : share_of_curve(Array{.panel = circuit.panel.today,
                                                    .series = circuit.panels.series,
                                                    .parallel = circuit.panels.parallel}
                                                  .at(stc_irradiance_w_m2, summer_cell_c));
    Margin margin{.name = "shade stress",
                  .subject = circuit.array_subject(),
                  .consequence = Severity::caution,
                  .value = 100.0 * share,
                  .limit = 98.0,
                  .unit = unit::percent,
                  .said = say<"bank.shade">(),
                  .source = "common-practice"};
    grade(margin);
    // Every load operates near the short-circuit current: only exceeding the limit counts.
    if (margin.headroom.value_or(0.0) >= 0.0) margin.severity = Severity::none;
    const auto kinds = circuit.kinds_of_panels();
    const bool stated = std::all_of(kinds.begin(), kinds.end(), [](const PanelInService* panel) {
        return panel->panel.bypass_diodes.has_value();
    });
    if (circuit.unlike && !stated) {  // where strings are unlike, the diodes decide the current
        margin.careful_headroom = headroom_of(100.0, *margin.limit);
        margin.missing.emplace_back("bypass_diodes");
    }
    return margin;
}

double drop_pct(const Circuit& circuit, double wire_ohm) {
    return 100.0 * wire_ohm / (wire_ohm + circuit.bank.typical_ohm());
}

/// Wire without a steady temperature, or in air that is not stated, may be as hot as the melting
/// point of copper; from memory.
constexpr double hottest_wire_c = 1085.0;

Margin drop_margin(const Circuit& circuit) {
    const bool air_stated =
        std::all_of(circuit.runs.begin(), circuit.runs.end(),
                    [](const RunParts& parts) { return parts.run.surroundings.air_c.has_value(); });
    const bool melts =
        std::any_of(circuit.runs.begin(), circuit.runs.end(), [](const RunParts& parts) {
            return parts.conductor_c > hottest_wire_c ||
                   (parts.brightest && parts.brightest->runaway);
        });
    const double wire_ohm = melts ? circuit.wire_ohm_at(hottest_wire_c) : circuit.wire_ohm();
    Margin margin{.name = "voltage drop",
                  .subject = "runs",
                  .consequence = Severity::caution,
                  .value = drop_pct(circuit, wire_ohm),
                  .limit = 3.0,
                  .unit = unit::percent,
                  .said = say<"bank.drop">(),
                  .source = "common-practice"};
    if (circuit.runs.empty()) {
        margin.value.reset();
        margin.said = say<"bank.no_runs">();
        margin.missing = {"runs"};
    }
    grade(margin);
    if (!air_stated) {
        margin.careful_headroom =
            headroom_of(drop_pct(circuit, circuit.wire_ohm_at(hottest_wire_c)), *margin.limit);
    }
    return margin;
}

}  // namespace

std::vector<Margin> element_margins(const Circuit& circuit, const Extremes& extremes) {
    const Bank& bank = circuit.bank;
    return {power_margin(circuit, extremes),
            share_voltage_margin(bank, extremes),
            sheath_voltage_margin(circuit),
            survivor_margin(bank, extremes),
            earth_fault_margin(bank, stands_in_liquid(circuit)),
            built_in_margin(bank.element)};
}

std::vector<Margin> load_margins(const Circuit& circuit) {
    return {shade_margin(circuit), drop_margin(circuit)};
}

std::vector<Margin> bank_margins(const Circuit& circuit, const Extremes& extremes) {
    std::vector<Margin> margins = element_margins(circuit, extremes);
    for (Margin& margin : load_margins(circuit)) margins.push_back(std::move(margin));
    return margins;
}

}  // namespace heatmatch
