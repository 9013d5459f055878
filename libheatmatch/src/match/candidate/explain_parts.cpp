#include "explain_parts.hpp"

#include <utility>

namespace heatmatch {

namespace {

using explain_sentences::say;
using namespace step;

constexpr Unit ohm_per_m{"ohm/m", Dimension::resistance_per_length};

Sentence source_of(const Provenance& provenance, const std::string& field) {
    const auto found = provenance.source_of.find(field);
    const std::string& source =
        found == provenance.source_of.end() ? provenance.source : found->second;
    return say<"explain.source">(with<"source">(source),
                                 with<"kind">(text_of_choice(provenance.source_kind)));
}

void explain_label(Trace& trace, const PanelInService& service) {
    const Panel& panel = service.panel;
    const auto given = [&](Sentence name, const char* field, double value, const char* symbol) {
        Sentence source = source_of(panel.provenance, field);
        for (const Assumption& assumption : service.assumed) {
            if (assumption.field == field) source = assumption.source;
        }
        trace.push_back({std::move(name), named(field), {}, value, symbol, std::move(source)});
    };
    given(say<"explain.panel_v_oc">(), "v_oc", panel.v_oc, "V");
    given(say<"explain.panel_i_sc">(), "i_sc", panel.i_sc, "A");
    given(say<"explain.panel_v_mp">(), "v_mp", *panel.v_mp, "V");
    given(say<"explain.panel_i_mp">(), "i_mp", *panel.i_mp, "A");
    given(say<"explain.panel_alpha">(), "alpha_isc_pct_per_k", *panel.alpha_isc_pct_per_k, "%/K");
    given(say<"explain.panel_beta">(), "beta_voc_pct_per_k", *panel.beta_voc_pct_per_k, "%/K");
    given(say<"explain.panel_gamma">(), "gamma_pmp_pct_per_k", *panel.gamma_pmp_pct_per_k, "%/K");

    const DatasheetFit& fit = service.as_new;
    const Sentence met = say<"explain.diode_fit">(with<"mode">(text_of_choice(fit.fit_mode)));
    const auto fitted = [&](Sentence name, double value, const char* symbol) {
        trace.push_back({std::move(name), met, {}, value, symbol, named("de-soto-2006")});
    };
    fitted(say<"explain.diode_current">(), fit.light_current_a, "A");
    fitted(say<"explain.diode_saturation">(), fit.ln_saturation_current, "");
    fitted(say<"explain.diode_series">(), fit.series_resistance_ohm, "ohm");
    fitted(say<"explain.diode_shunt">(), fit.shunt_conductance_s, "S");
    fitted(say<"explain.diode_ideality">(), fit.modified_ideality_v, "V");
    if (fit.fit_mode != FitMode::exact) {
        trace.push_back({say<"explain.label_moved">(),
                         say<"explain.label_moved_by">(with<"whole">(1.0)),
                         {},
                         100.0 * fit.vmp_shift,
                         "%",
                         {}});
    }
}

void explain_today(Trace& trace, const OwnedPanels& owned, const PanelInService& service) {
    const auto& measured = owned.measured;
    const auto read = [&](Sentence name, const Unit& unit, double value, double factor) {
        trace.push_back({std::move(name), say<"explain.measured">(),
                         ratio(in(unit, value), in(unit, value / factor)), factor, "of new",
                         named("measured")});
    };
    if (measured && measured->i_sc) {
        read(say<"explain.current_today">(), unit::ampere, *measured->i_sc, service.current_factor);
    } else if (owned.age_years) {
        constexpr double loss = 0.005;  // a year, the median
        trace.push_back(
            {say<"explain.current_today">(),
             say<"explain.aged">(with<"whole">(1.0), with<"loss">(100.0 * loss, unit::percent)),
             say<"explain.aged_numbers">(with<"whole">(1.0), with<"loss">(loss),
                                         with<"age">(plain(*owned.age_years))),
             service.current_factor, "of new", named("jordan-kurtz-2012")});
    } else {
        trace.push_back(
            {say<"explain.current_today">(), say<"explain.as_new">(), {}, 1.0, "of new", {}});
    }
    if (service.bright_isc_a() > service.i_sc_limit_a) {
        const double factor = service.bright_isc_a() / service.i_sc_limit_a;
        trace.push_back({say<"explain.light_behind">(),
                         say<"explain.light_behind_by">(with<"whole">(1.0),
                                                        with<"share">(stress_rear_w_m2 / 1000.0)),
                         say<"explain.light_behind_numbers">(
                             with<"current">(in(unit::ampere, service.i_sc_limit_a)),
                             with<"factor">(plain(factor, 4))),
                         service.bright_isc_a(), "A", named("iec-61215-1")});
    }
    if (measured && measured->v_oc) {
        read(say<"explain.voltage_today">(), unit::volt, *measured->v_oc, service.voltage_factor);
    }
}

void explain_cold_factor(Trace& trace, const PanelInService& service) {
    const ColdVoltage& cold = service.cold;
    Step factor{
        .name = say<"explain.cold_factor">(), .value = cold.factor, .source = named(cold.source)};
    if (cold.from_table) {
        factor.formula = say<"explain.cold_by_table">();
        factor.numbers =
            say<"explain.cold_at">(with<"low">(in(unit::celsius, service.record_low_c)));
    } else {
        const double beta = *service.panel.beta_voc_pct_per_k / 100.0;
        // Beta is per kelvin: its temperatures are in °C in both unit sets.
        factor.formula = say<"explain.cold_by_label">(with<"whole">(1.0),
                                                      with<"label">(plain(stc_temperature_c)));
        factor.numbers = say<"explain.cold_numbers">(with<"whole">(1.0), with<"beta">(plain(beta)),
                                                     with<"low">(plain(service.record_low_c)),
                                                     with<"label">(plain(stc_temperature_c)));
    }
    trace.push_back(std::move(factor));
}

void explain_voltage(Trace& trace, const Circuit& circuit) {
    const ColdVoltage& cold = circuit.panel.cold;
    trace.push_back(
        {say<"explain.cold_voltage">(),
         say<"explain.cold_voltage_by">(),
         say<"explain.cold_voltage_numbers">(with<"voltage">(in(unit::volt, cold.v_oc_at_25_c)),
                                             with<"factor">(plain(cold.factor)),
                                             with<"panels">(plain(circuit.panels.series))),
         circuit.cold_voltage_v(),
         "V",
         {}});
}

/// Each string's volts are the sum of its panels'.
void explain_string_voltages(Trace& trace, const UnlikeArray& array) {
    for (std::size_t s = 0; s < array.strings.size(); ++s) {
        Sentences terms;
        for (std::size_t g = 0; g < array.groups.size(); ++g) {
            const int count = array.count_in(s, g);
            if (count == 0) continue;
            terms.push_back(say<"explain.string_volts_term">(
                with<"panels">(plain(count)),
                with<"voltage">(in(unit::volt, array.panel(g).cold.v_oc, 4))));
        }
        trace.push_back(
            {say<"explain.string_volts">(with<"string">(plain(static_cast<double>(s + 1)))),
             say<"explain.string_volts_by">(),
             sentence_of(std::move(terms)),
             array.cold_voltage_v(s),
             "V",
             {}});
    }
}

/// One element of the bank, alone.
void explain_element(Trace& trace, const Bank& bank) {
    const Element& element = bank.element;
    const auto given = [&](Sentence name, const char* field, const std::optional<double>& value,
                           const char* symbol) {
        if (!value) return;
        trace.push_back({std::move(name),
                         named(field),
                         {},
                         *value,
                         symbol,
                         source_of(element.provenance, field)});
    };
    given(say<"explain.rated_v">(), "rated_v", element.rated_v, "V");
    given(say<"explain.rated_w">(), "rated_w", element.rated_w, "W");
    given(say<"explain.printed_ohm">(), "resistance_ohm", element.resistance_ohm, "ohm");
    given(say<"explain.measured_ohm">(), "measured_resistance_ohm", element.measured_resistance_ohm,
          "ohm");
    const Amount typical = in(unit::ohm, bank.each.typical_ohm);
    Step ohms{.name = say<"explain.typical_ohm">(),
              .formula = say<"explain.ohm_by_ohms">(),
              .value = bank.each.typical_ohm,
              .unit = "ohm",
              .source = named(bank.alloy ? bank.alloy->provenance.source : "gb-t-1234")};
    if (bank.each.basis == ResistanceBasis::volts_and_watts) {
        const double rated = *element.rated_v * *element.rated_v / *element.rated_w;
        ohms.formula = say<"explain.ohm_by_rating">();
        ohms.numbers = say<"explain.ohm_by_rating_numbers">(
            with<"voltage">(in(unit::volt, *element.rated_v)),
            with<"power">(in(unit::watt, *element.rated_w)),
            with<"factor">(plain(bank.each.typical_ohm / rated, 4)));
    }
    trace.push_back(std::move(ohms));
    const auto end = [&](Sentence name, double ohm) {
        trace.push_back(
            {std::move(name), say<"explain.ohm_at_end">(),
             say<"explain.ohm_at_end_numbers">(
                 with<"typical">(typical), with<"factor">(plain(ohm / bank.each.typical_ohm, 4))),
             ohm, "ohm", named("tubular-catalogue-tolerance")});
    };
    end(say<"explain.low_ohm">(), bank.each.low_ohm);
    end(say<"explain.high_ohm">(), bank.each.high_ohm);
}

void explain_bank(Trace& trace, const Circuit& circuit) {
    const Bank& bank = circuit.bank;
    if (bank.unlike) {
        for (const Bank& kind : bank.kinds()) {
            const std::size_t first = trace.size();
            explain_element(trace, kind);
            name_element(trace, first, kind.element.id);
        }
        trace.push_back({say<"explain.bank_ohm">(),
                         say<"explain.bank_ohm_unlike">(with<"one">(1.0)),
                         named(bank.label()),
                         bank.typical_ohm(),
                         "ohm",
                         {}});
        return;
    }
    explain_element(trace, bank);
    trace.push_back(
        {say<"explain.bank_ohm">(),
         say<"explain.bank_ohm_by">(),
         say<"explain.bank_ohm_numbers">(with<"each">(in(unit::ohm, bank.each.typical_ohm)),
                                         with<"series">(plain(bank.hookup.series)),
                                         with<"branches">(plain(bank.hookup.parallel))),
         bank.typical_ohm(),
         "ohm",
         {}});
}

void explain_runs(Trace& trace, const Circuit& circuit) {
    constexpr double ways = 2.0;
    Sentences shares;
    for (const RunParts& parts : circuit.runs) {
        if (!parts.wire) continue;
        const auto there_and_back = with<"ways">(ways);
        const auto length = with<"length">(in(unit::metre, parts.run.length_m));
        const auto each =
            with<"each">(in(ohm_per_m, resistance_ohm_per_m(*parts.wire, parts.conductor_c), 4));
        trace.push_back({say<"explain.run_ohm">(with<"run">(parts.run.name)),
                         say<"explain.run_ohm_by">(there_and_back),
                         parts.run.joint_ohm
                             ? say<"explain.run_ohm_joints">(
                                   there_and_back, length, each,
                                   with<"joints">(in(unit::ohm, *parts.run.joint_ohm)))
                             : say<"explain.run_ohm_numbers">(there_and_back, length, each),
                         parts.loop_ohm(), "ohm", named("iec-60028")});
        const double share = circuit.wire_share(parts.run);
        const Amount ohms = in(unit::ohm, parts.loop_ohm(), 4);
        shares.push_back(share < 1.0 ? say<"explain.run_share">(with<"ohms">(ohms),
                                                                with<"share">(plain(share, 4)))
                                     : sentence_of(ohms));
    }
    trace.push_back({say<"explain.runs_ohm">(),
                     say<"explain.runs_ohm_by">(),
                     shares.empty()
                         ? Sentence{}
                         : say<"explain.runs_ohm_numbers">(with<"runs">(std::move(shares))),
                     circuit.wire_ohm(),
                     "ohm",
                     {}});
}

}  // namespace

void name_element(Trace& trace, std::size_t first, const std::string& element) {
    for (std::size_t i = first; i < trace.size(); ++i) {
        Sentence step = std::move(trace[i].name);
        trace[i].name = say<"explain.of_element">(with<"step">(std::move(step)),
                                                  with<"element">(Name{element}));
    }
}

void explain_parts(Trace& trace, const Circuit& circuit) {
    const auto explain_panel = [&trace](const OwnedPanels& owned, const PanelInService& service) {
        explain_label(trace, service);
        explain_today(trace, owned, service);
        explain_cold_factor(trace, service);
    };
    if (circuit.unlike) {
        for (const GroupInArray& group : circuit.unlike->groups) {
            trace.push_back({say<"explain.group">(with<"group">(group.owned.group)),
                             say<"explain.group_by">(with<"panel">(group.panel.panel.id)),
                             {},
                             static_cast<double>(group.count),
                             {},
                             {}});
            explain_panel(group.owned, group.panel);
        }
        explain_string_voltages(trace, *circuit.unlike);
    } else {
        explain_panel(circuit.owned, circuit.panel);
        explain_voltage(trace, circuit);
    }
    explain_bank(trace, circuit);
    explain_runs(trace, circuit);
}

}  // namespace heatmatch
