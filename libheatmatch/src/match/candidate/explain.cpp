#include "heatmatch/match/candidate/explain.hpp"

#include "explain_parts.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch {

namespace {

using explain_sentences::say;
using namespace step;

void explain_load_of_panel(Trace& trace, const Circuit& circuit) {
    const double bank_ohm = circuit.bank.typical_ohm();
    const double total = bank_ohm + circuit.wire_ohm();
    trace.push_back(
        {say<"explain.panel_sees">(),
         say<"explain.panel_sees_by">(),
         say<"explain.panel_sees_numbers">(with<"bank">(number(unit::ohm, bank_ohm)),
                                           with<"runs">(number(unit::ohm, circuit.wire_ohm(), 3)),
                                           with<"unit">(unit_of(unit::ohm)),
                                           with<"strings">(plain(circuit.panels.parallel)),
                                           with<"series">(plain(circuit.panels.series))),
         total / circuit.panels.resistance_factor(),
         "ohm",
         {}});
    const Panel& panel = circuit.panel.panel;
    trace.push_back({say<"explain.stc_match">(),
                     say<"explain.stc_match_by">(),
                     ratio(in(unit::volt, *panel.v_mp), in(unit::ampere, *panel.i_mp)),
                     *panel.v_mp / *panel.i_mp,
                     "ohm",
                     {}});
}

/// How the heat of the season was summed.
Step season_step(const Circuit& circuit, const Season& season) {
    Step step{.name = say<"explain.season_heat">(),
              .value = season.kwh,
              .unit = "kWh",
              .source = named("de-soto-2006")};
    if (circuit.unlike) {
        step.formula = say<"explain.array_season_by">();
        return step;
    }
    const double ohm = circuit.bank.typical_ohm();
    const double total = ohm + circuit.wire_ohm();
    step.formula = say<"explain.season_heat_by">();
    step.numbers = say<"explain.season_heat_numbers">(
        with<"panels">(plain(circuit.panels.count())),
        with<"each">(in(unit::ohm, total / circuit.panels.resistance_factor())),
        with<"bank">(in(unit::ohm, ohm)), with<"total">(in(unit::ohm, total)),
        with<"days">(plain(season.days)));
    return step;
}

void explain_power(Trace& trace, const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    const double bank_ohm = circuit.bank.typical_ohm();
    if (circuit.unlike) {
        trace.push_back({say<"explain.array_match">(),
                         say<"explain.array_match_by">(),
                         {},
                         circuit.label_match_ohm(),
                         "ohm",
                         {}});
    } else {
        explain_load_of_panel(trace, circuit);
    }
    Sentences powers;
    for (const Delivered& at : candidate.delivered) {
        const auto sun = with<"sun">(in(unit::watt_per_m2, at.irradiance_w_m2));
        const auto cells = with<"cells">(in(unit::celsius, at.cell_temperature_c));
        trace.push_back({say<"explain.current_at">(sun, cells),
                         say<"explain.current_by">(),
                         {},
                         at.current_a,
                         "A",
                         named("de-soto-2006")});
        trace.push_back(
            {say<"explain.power_at">(sun, cells),
             say<"explain.power_by">(),
             say<"explain.power_numbers">(with<"current">(in(unit::ampere, at.current_a)),
                                          with<"bank">(in(unit::ohm, bank_ohm))),
             at.power_w,
             "W",
             {}});
        powers.push_back(sentence_of(number(unit::watt, at.power_w, 4)));
    }
    if (powers.empty()) return;
    const auto conditions = static_cast<double>(powers.size());
    trace.push_back({say<"explain.mean_power">(),
                     say<"explain.mean_power_by">(),
                     say<"explain.mean_power_numbers">(with<"powers">(std::move(powers)),
                                                       with<"unit">(unit_of(unit::watt)),
                                                       with<"conditions">(plain(conditions))),
                     candidate.mean_power_w(),
                     "W",
                     {}});
}

void explain_season(Trace& trace, const Candidate& candidate) {
    if (!candidate.season) return;
    const Season& season = *candidate.season;
    const Unit& kwh = unit::kilowatt_hour;
    trace.push_back(season_step(candidate.circuit, season));
    trace.push_back({say<"explain.season_mpp">(),
                     say<"explain.season_mpp_by">(),
                     {},
                     season.mpp_kwh,
                     "kWh",
                     named("de-soto-2006")});
    trace.push_back({say<"explain.season_harvest">(),
                     say<"explain.season_harvest_by">(),
                     ratio(in(kwh, season.kwh), in(kwh, season.mpp_kwh)),
                     season.harvest_fraction(),
                     {},
                     {}});
    trace.push_back({say<"explain.season_best">(),
                     say<"explain.season_best_by">(with<"none">(0.0)),
                     {},
                     season.best_ohm,
                     "ohm",
                     {}});
}

void explain_sheath(Trace& trace, const BankHeat& heat, const HeatPoint& point) {
    const FilledStore& store = *heat.store;
    const double conductivity =
        heat.liquid ? store.medium.k20_w_mk : heat.careful.fill.conductivity.at(293.15);
    trace.push_back(
        {say<"explain.sheath_low">(),
         heat.liquid ? say<"explain.sheath_in_liquid">(with<"rise">(in(unit::kelvin, 10.0)),
                                                       with<"boiling">(in(unit::kelvin, 25.0)))
                     : say<"explain.sheath_in_bed">(with<"two">(2.0)),
         say<"explain.sheath_numbers">(
             with<"charge">(in(unit::hour, store.charge_hours)), with<"days">(plain(bright_days)),
             with<"air">(in(unit::celsius, store.air_c)), with<"symbol">(Name{"k20"}),
             with<"conductivity">(in(unit::watt_per_m_k, conductivity))),
         point.sheath_band.high_c, "°C", named("carslaw-jaeger")});
    const Amount factor{.value = 1.10, .decimals = 2};
    trace.push_back({say<"explain.sheath_judged">(),
                     say<"explain.sheath_judged_by">(with<"factor">(factor)),
                     say<"explain.sheath_judged_numbers">(
                         with<"air">(number(unit::celsius, store.air_c)), with<"factor">(factor),
                         with<"sheath">(number(unit::celsius, point.sheath_band.high_c)),
                         with<"unit">(unit_of(unit::celsius))),
                     point.sheath_c,
                     "°C",
                     {}});
}

void explain_other(Trace& trace, const OtherBank& other) {
    if (other.own) {
        trace.push_back({say<"explain.other_element">(with<"element">(Name{other.element.id})),
                         say<"explain.other_element_by">(),
                         {},
                         other.power_w(),
                         "W",
                         {}});
        return;
    }
    trace.push_back(
        {say<"explain.other_circuit">(with<"circuit">(other.circuit)),
         say<"explain.other_circuit_by">(),
         say<"explain.other_circuit_numbers">(with<"elements">(plain(other.elements)),
                                              with<"power">(in(unit::watt, other.element_w))),
         other.power_w(),
         "W",
         {}});
}

void explain_heat_of(Trace& trace, const Candidate& candidate, const Circuit& circuit,
                     const Extremes& bright) {
    const auto point = heat_of(circuit, bright);
    if (!point) return;
    const BankHeat& heat = *circuit.heat;
    const double element_w = bright.element_power_w;
    trace.push_back({say<"explain.largest_power">(),
                     say<"explain.largest_power_by">(
                         with<"sun">(in(unit::watt_per_m2, candidate.site.bright_irradiance_w_m2)),
                         with<"rise">(in(unit::kelvin, 20.0))),
                     {},
                     element_w,
                     "W",
                     {}});
    trace.push_back(
        {say<"explain.watts_per_length">(),
         say<"explain.watts_per_length_by">(),
         say<"explain.watts_per_length_numbers">(
             with<"elements">(plain(heat.elements)), with<"power">(in(unit::watt, element_w)),
             with<"length">(in(unit::centimetre, 100.0 * heat.heated_length_m))),
         point->w_per_cm,
         "W/cm",
         {}});
    for (const OtherBank& other : heat.store->others) explain_other(trace, other);
    explain_sheath(trace, heat, *point);
    const auto tail = tail_of(circuit, bright, point);
    if (!tail) return;
    trace.push_back(
        {say<"explain.terminal">(), say<"explain.terminal_by">(),
         say<"explain.terminal_numbers">(
             with<"end">(in(unit::celsius, tail->heated_end_c)),
             with<"distance">(in(unit::millimetre, 1000.0 * tail->terminal_distance_m))),
         tail->terminal_c, "°C", named("incropera")});
}

void explain_heat(Trace& trace, const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    if (!circuit.bank.unlike) return explain_heat_of(trace, candidate, circuit, candidate.bright);
    const std::vector<std::size_t> distinct = circuit.bank.unlike->distinct();
    for (const ElementSeen& one : elements_seen(circuit, candidate.bright)) {
        if (std::find(distinct.begin(), distinct.end(), one.element) == distinct.end()) continue;
        const std::size_t first = trace.size();
        explain_heat_of(trace, candidate, one.circuit, one.bright);
        name_element(trace, first, one.circuit.bank.element.id);
    }
}

void explain_margins(Trace& trace, const Candidate& candidate) {
    for (const Margin& margin : candidate.margins()) {
        if (!margin.value || !margin.limit || !margin.headroom) continue;
        trace.push_back(
            {say<"explain.headroom">(with<"margin">(shown_margin_name(margin.name)),
                                     with<"subject">(margin.subject)),
             say<"explain.headroom_by">(),
             say<"explain.headroom_numbers">(with<"value">(number(margin.unit, *margin.value, 4)),
                                             with<"limit">(number(margin.unit, *margin.limit, 4)),
                                             with<"unit">(unit_of(margin.unit))),
             *margin.headroom,
             {},
             named(margin.source)});
    }
}

}  // namespace

Trace explain(const Candidate& candidate) {
    Trace trace;
    explain_parts(trace, candidate.circuit);
    explain_power(trace, candidate);
    explain_season(trace, candidate);
    explain_heat(trace, candidate);
    explain_margins(trace, candidate);
    return trace;
}

Sentence said(const Step& step) {
    const Unit* known = find_unit(step.unit);
    const Amount value = number(known == nullptr ? unit::none : *known, step.value, 6);
    const auto unit =
        known == nullptr ? with<"unit">(Name{step.unit}) : with<"unit">(unit_of(*known));
    Sentence whole =
        step.numbers.empty()
            ? say<"explain.given">(with<"name">(step.name), with<"formula">(step.formula),
                                   with<"value">(value), unit)
            : say<"explain.computed">(with<"name">(step.name), with<"formula">(step.formula),
                                      with<"numbers">(step.numbers), with<"value">(value), unit);
    if (step.source.empty()) return whole;
    return say<"explain.sourced">(with<"step">(std::move(whole)), with<"source">(step.source));
}

}  // namespace heatmatch
