#include "heatmatch/match/candidate/explain.hpp"

#include <cmath>

#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch {

namespace {

std::string n(double value, int digits = 5) {
    return format_number(value, digits);
}

std::string source_of(const Provenance& provenance, const std::string& field) {
    const auto found = provenance.source_of.find(field);
    const std::string& source =
        found == provenance.source_of.end() ? provenance.source : found->second;
    return source + " (" + provenance.source_kind + ")";
}

void explain_panel(Trace& trace, const Circuit& circuit) {
    const PanelInService& service = circuit.panel;
    const Panel& panel = service.panel;
    const auto given = [&](const char* name, const char* field, double value, const char* symbol) {
        std::string source = source_of(panel.provenance, field);
        for (const Assumption& assumption : service.assumed) {
            if (assumption.field == field) source = assumption.source.text();
        }
        trace.push_back({name, field, "", value, symbol, source});
    };
    given("panel, open-circuit voltage", "v_oc", panel.v_oc, "V");
    given("panel, short-circuit current", "i_sc", panel.i_sc, "A");
    given("panel, voltage at maximum power", "v_mp", *panel.v_mp, "V");
    given("panel, current at maximum power", "i_mp", *panel.i_mp, "A");
    given("panel, coefficient of current", "alpha_isc_pct_per_k", *panel.alpha_isc_pct_per_k,
          "%/K");
    given("panel, coefficient of voltage", "beta_voc_pct_per_k", *panel.beta_voc_pct_per_k, "%/K");
    given("panel, coefficient of power", "gamma_pmp_pct_per_k", *panel.gamma_pmp_pct_per_k, "%/K");

    const DatasheetFit& fit = service.as_new;
    const std::string mode =
        "label met by a single diode, mode " + std::string(fit_mode_name(fit.fit_mode));
    trace.push_back(
        {"single diode, light current", mode, "", fit.light_current_a, "A", "de-soto-2006"});
    trace.push_back({"single diode, ln of saturation current", mode, "", fit.ln_saturation_current,
                     "", "de-soto-2006"});
    trace.push_back({"single diode, series resistance", mode, "", fit.series_resistance_ohm, "ohm",
                     "de-soto-2006"});
    trace.push_back({"single diode, shunt conductance", mode, "", fit.shunt_conductance_s, "S",
                     "de-soto-2006"});
    trace.push_back({"single diode, modified ideality", mode, "", fit.modified_ideality_v, "V",
                     "de-soto-2006"});
    if (fit.fit_mode != FitMode::exact) {
        trace.push_back({"move of v_mp from the label", "v_mp of the model / v_mp of the label - 1",
                         "", 100.0 * fit.vmp_shift, "%", ""});
    }
    const auto& measured = circuit.owned.measured;
    const std::string by_meter = "measured / modelled at the same sun and temperature";
    if (measured && measured->i_sc) {
        trace.push_back(
            {"panel today, current", by_meter,
             n(*measured->i_sc) + " A / " + n(*measured->i_sc / service.current_factor) + " A",
             service.current_factor, "of new", "measured"});
    } else if (circuit.owned.age_years) {
        trace.push_back({"panel today, current", "1 - 0.5% a year x age",
                         "1 - 0.005 x " + n(*circuit.owned.age_years), service.current_factor,
                         "of new", "jordan-kurtz-2012"});
    } else {
        trace.push_back({"panel today, current", "counted as new", "", 1.0, "of new", ""});
    }
    if (measured && measured->v_oc) {
        trace.push_back(
            {"panel today, voltage", by_meter,
             n(*measured->v_oc) + " V / " + n(*measured->v_oc / service.voltage_factor) + " V",
             service.voltage_factor, "of new", "measured"});
    }
}

void explain_voltage(Trace& trace, const Circuit& circuit) {
    const ColdVoltage& cold = circuit.panel.cold;
    const std::string by_label = "1 + " + n(*circuit.panel.panel.beta_voc_pct_per_k / 100.0) +
                                 "/K x (" + n(circuit.panel.record_low_c) + " - 25) K";
    trace.push_back(
        {"cold voltage factor",
         cold.from_table ? "table of the code at the record low" : "1 + beta (record low - 25 °C)",
         cold.from_table ? "at " + n(circuit.panel.record_low_c) + " °C" : by_label, cold.factor,
         "", cold.source});
    trace.push_back({"cold voltage of the array", "Voc x factor x panels in series",
                     n(cold.v_oc_at_25_c) + " V x " + n(cold.factor) + " x " +
                         std::to_string(circuit.panels.series),
                     circuit.cold_voltage_v(), "V", ""});
}

void explain_bank(Trace& trace, const Circuit& circuit) {
    const Bank& bank = circuit.bank;
    const Element& element = bank.element;
    const auto given = [&](const char* name, const char* field, const std::optional<double>& value,
                           const char* symbol) {
        if (value) {
            trace.push_back(
                {name, field, "", *value, symbol, source_of(element.provenance, field)});
        }
    };
    given("element, rated voltage", "rated_v", element.rated_v, "V");
    given("element, rated power", "rated_w", element.rated_w, "W");
    given("element, printed resistance", "resistance_ohm", element.resistance_ohm, "ohm");
    given("element, measured resistance", "measured_resistance_ohm",
          element.measured_resistance_ohm, "ohm");
    std::string formula = "R = ohms x factor of the alloy when hot";
    std::string numbers;
    if (bank.each.basis == "volts and watts") {
        const double rated = *element.rated_v * *element.rated_v / *element.rated_w;
        formula = "R = V² / P x alloy factor in use / at rated watts";
        numbers = "(" + n(*element.rated_v) + " V)² / " + n(*element.rated_w) + " W x " +
                  n(bank.each.typical_ohm / rated, 4);
    }
    trace.push_back({"element resistance, typical", formula, numbers, bank.each.typical_ohm, "ohm",
                     bank.alloy ? bank.alloy->provenance.source : "gb-t-1234"});
    const auto end = [&](const char* name, double ohm) {
        trace.push_back({name, "typical x tolerance and alloy at that end",
                         n(bank.each.typical_ohm) + " ohm x " + n(ohm / bank.each.typical_ohm, 4),
                         ohm, "ohm", "tubular-catalogue-tolerance"});
    };
    end("element resistance, low end", bank.each.low_ohm);
    end("element resistance, high end", bank.each.high_ohm);
    trace.push_back({"bank resistance", "R x elements in series / branches",
                     n(bank.each.typical_ohm) + " ohm x " + std::to_string(bank.hookup.series) +
                         " / " + std::to_string(bank.hookup.parallel),
                     bank.typical_ohm(), "ohm", ""});
}

void explain_runs(Trace& trace, const Circuit& circuit) {
    std::string sum;
    for (const RunParts& parts : circuit.runs) {
        if (!parts.wire) continue;
        const std::string joints =
            parts.run.joint_ohm ? " + " + n(*parts.run.joint_ohm) + " ohm" : "";
        trace.push_back({"ohms of \"" + parts.run.name + '"',
                         "2 x length x ohms per metre at its temperature + joints",
                         "2 x " + n(parts.run.length_m) + " m x " +
                             n(resistance_ohm_per_m(*parts.wire, parts.conductor_c), 4) + " ohm/m" +
                             joints,
                         parts.loop_ohm(), "ohm", "iec-60028"});
        const double share = circuit.current_share(parts.run);
        sum += (sum.empty() ? "" : " + ") + n(parts.loop_ohm(), 4) + " ohm" +
               (share < 1.0 ? " x " + n(share, 4) : "");
    }
    trace.push_back({"ohms of all runs", "strings and branches share theirs", sum,
                     circuit.wire_ohm(), "ohm", ""});
}

void explain_power(Trace& trace, const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    const double total = circuit.bank.typical_ohm() + circuit.wire_ohm();
    trace.push_back({"ohms one panel sees", "(bank + runs) x strings / panels in series",
                     "(" + n(circuit.bank.typical_ohm()) + " + " + n(circuit.wire_ohm(), 3) +
                         ") ohm x " + std::to_string(circuit.panels.parallel) + " / " +
                         std::to_string(circuit.panels.series),
                     total / circuit.panels.resistance_factor(), "ohm", ""});
    trace.push_back({"noon match of one panel", "Vmp / Imp",
                     n(*circuit.panel.panel.v_mp) + " V / " + n(*circuit.panel.panel.i_mp) + " A",
                     *circuit.panel.panel.v_mp / *circuit.panel.panel.i_mp, "ohm", ""});
    std::string sum;
    for (const Delivered& at : candidate.delivered) {
        const std::string where =
            n(at.irradiance_w_m2) + " W/m2, " + n(at.cell_temperature_c) + " °C";
        trace.push_back({"current at " + where, "where I = I(V) of the array meets V = I R", "",
                         at.current_a, "A", "de-soto-2006"});
        trace.push_back({"power at " + where, "P = I² x bank",
                         "(" + n(at.current_a) + " A)² x " + n(circuit.bank.typical_ohm()) + " ohm",
                         at.power_w, "W", ""});
        sum += (sum.empty() ? "(" : " + ") + n(at.power_w, 4);
    }
    if (candidate.delivered.empty()) return;
    trace.push_back({"mean power", "mean over the conditions",
                     sum + ") W / " + std::to_string(candidate.delivered.size()),
                     candidate.mean_power_w(), "W", ""});
}

void explain_season(Trace& trace, const Candidate& candidate) {
    if (!candidate.season) return;
    const Season& season = *candidate.season;
    const Circuit& circuit = candidate.circuit;
    const double ohm = circuit.bank.typical_ohm();
    const double total = ohm + circuit.wire_ohm();
    const double each = total / circuit.panels.resistance_factor();
    const int panels = circuit.panels.count();
    trace.push_back({"heat of the season",
                     "panels x E(ohms one panel sees) x bank / (bank + runs), E summed over the "
                     "weather of the season's days",
                     std::to_string(panels) + " x E(" + n(each) + " ohm) x " + n(ohm) + " ohm / " +
                         n(total) + " ohm, " + n(season.days) + " days",
                     season.kwh, "kWh", "de-soto-2006"});
    trace.push_back({"heat at the maximum power point", "panels x sum of hours x Pmp", "",
                     season.mpp_kwh, "kWh", "de-soto-2006"});
    trace.push_back({"harvest fraction of the season", "heat / heat at the maximum power point",
                     n(season.kwh) + " kWh / " + n(season.mpp_kwh) + " kWh",
                     season.harvest_fraction(), "", ""});
    trace.push_back({"best ohms of a bank for the season", "where dE/d(ln R) = 0", "",
                     season.best_ohm, "ohm", ""});
}

void explain_heat(Trace& trace, const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    const auto point = heat_of(circuit, candidate.bright);
    if (!point) return;
    const BankHeat& heat = *circuit.heat;
    const FilledStore& store = *heat.store;
    trace.push_back({"largest power of one element",
                     "largest of I² R at " + n(candidate.site.bright_irradiance_w_m2) +
                         " W/m2 and record low + 20 K, ohms at their worst end",
                     "", candidate.bright.element_power_w, "W", ""});
    trace.push_back({"watts per centimetre", "elements x power / heated length in all",
                     std::to_string(heat.elements) + " x " + n(candidate.bright.element_power_w) +
                         " W / " + n(100.0 * heat.heated_m) + " cm",
                     point->w_per_cm, "W/cm", ""});
    trace.push_back(
        {"sheath, low conductivity",
         heat.liquid ? "the liquid + 10 K, or + 25 K where it boils"
                     : "Theta(Ts) = Theta(bed) + q'/(2 pi) sum over the legs of "
                       "asinh(L/2d) - asinh(L/2rho)",
         n(store.charge_hours) + " h a day, " + n(bright_days) + " days, air " + n(store.air_c) +
             " °C, k20 " +
             n(heat.liquid ? store.medium.k20_w_mk : heat.careful.fill.conductivity.at(293.15)) +
             " W/mK",
         point->sheath_band.high_c, "°C", "carslaw-jaeger"});
    trace.push_back({"sheath, judged", "air + 1.10 x (sheath - air)",
                     n(store.air_c) + " + 1.10 x (" + n(point->sheath_band.high_c) + " - " +
                         n(store.air_c) + ") °C",
                     point->sheath_c, "°C", ""});
    const auto tail = tail_of(circuit, candidate.bright, point);
    if (!tail) return;
    trace.push_back({"terminal", "chain of fins from the heated end to the wire",
                     "end of heat " + n(tail->end_of_heat_c) + " °C, " +
                         n(1000.0 * tail->terminal_from_heat_m) + " mm on",
                     tail->terminal_c, "°C", "incropera"});
}

void explain_margins(Trace& trace, const Candidate& candidate) {
    for (const Margin& margin : candidate.margins()) {
        if (!margin.value || !margin.limit || !margin.headroom) continue;
        trace.push_back({"headroom of " + margin.name + ", " + margin.subject,
                         "(limit - value) / (limit - at rest)",
                         "value " + n(*margin.value, 4) + ", limit " + n(*margin.limit, 4) + ' ' +
                             std::string(margin.unit.symbol),
                         *margin.headroom, "", margin.source});
    }
}

}  // namespace

Trace explain(const Candidate& candidate) {
    Trace trace;
    explain_panel(trace, candidate.circuit);
    explain_voltage(trace, candidate.circuit);
    explain_bank(trace, candidate.circuit);
    explain_runs(trace, candidate.circuit);
    explain_power(trace, candidate);
    explain_season(trace, candidate);
    explain_heat(trace, candidate);
    explain_margins(trace, candidate);
    return trace;
}

}  // namespace heatmatch
