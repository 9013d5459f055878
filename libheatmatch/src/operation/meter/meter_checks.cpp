#include "meter_checks.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

using meter_sentences::say;

Sentence CheckWriter::span(const MeterCheck& check) {
    return say<"meter.span">(with<"low">(*check.low, check.unit),
                             with<"high">(*check.high, check.unit),
                             with<"typical">(*check.typical, check.unit));
}

ElementResistance CheckWriter::cold(const Bank& one) {
    return element_resistance(one.element, one.alloy ? &*one.alloy : nullptr, cold_element_c);
}

ElementResistance CheckWriter::cold_bank() const {
    const Bank& bank = circuit_.bank;
    ElementResistance found;
    if (!bank.unlike) {
        found = cold(bank);
        const double share = bank.hookup.resistance_factor();
        found.low_ohm *= share;
        found.typical_ohm *= share;
        found.high_ohm *= share;
        return found;
    }
    for (auto end : {&ElementResistance::low_ohm, &ElementResistance::typical_ohm,
                     &ElementResistance::high_ohm}) {
        std::vector<double> ohm;
        for (const Bank& one : bank.unlike->elements) ohm.push_back(cold(one).*end);
        found.*end = bank.unlike->tree.resistance_ohm(ohm);
    }
    return found;
}

void CheckWriter::ohms_of(const Bank& one) {
    constexpr double small_ohm = 2.0;
    MeterCheck each{.reading = circuit_.bank.unlike
                                   ? say<"meter.ohms_of">(with<"element">(Name{one.element.id}))
                                   : say<"meter.ohms_each">(),
                    .how = say<"meter.ohms_each.how">(with<"small">(small_ohm, unit::ohm)),
                    .expect = say<"meter.not_known">(),
                    .unit = unit::ohm,
                    .if_low = say<"meter.ohms_each.low">(),
                    .if_high = say<"meter.ohms_each.high">(),
                    .source = "tubular-catalogue-tolerance"};
    if (has_bank()) {
        const ElementResistance at20 = cold(one);
        each.low = at20.low_ohm;
        each.typical = at20.typical_ohm;
        each.high = at20.high_ohm;
        each.expect = say<"meter.ohms_each.expect">(with<"span">(span(each)),
                                                    with<"at">(cold_element_c, unit::celsius),
                                                    with<"basis">(shown_choice(at20.basis)));
    }
    add(each);
}

/// What the bank reads with a branch or an element open; empty where nothing is left.
Sentence CheckWriter::ohms_with_one_open(double cold_ohm) const {
    const Bank& bank = circuit_.bank;
    if (!bank.unlike) {
        if (bank.hookup.parallel < 2) return {};
        return say<"meter.ohms_bank.open">(
            with<"open">(bank.with_one_branch_open(cold_ohm), unit::ohm));
    }
    const std::vector<double> left = bank.unlike->with_each_open_ohm();
    Sentences told;
    for (const std::size_t i : bank.unlike->distinct()) {
        if (std::isinf(left[i])) continue;
        told.push_back(say<"meter.ohms_bank.element_open">(
            with<"element">(Name{bank.unlike->title_of(i)}),
            with<"open">(left[i] * cold_ohm / bank.typical_ohm(), unit::ohm)));
    }
    return told.empty() ? Sentence{} : sentence_of(told);
}

void CheckWriter::ohms() {
    for (const Bank& kind : circuit_.bank.kinds()) ohms_of(kind);
    MeterCheck bank{.reading = say<"meter.ohms_bank">(),
                    .how = say<"meter.ohms_bank.how">(),
                    .expect = say<"meter.not_known">(),
                    .unit = unit::ohm,
                    .if_low = say<"meter.ohms_bank.low">(),
                    .if_high = say<"meter.ohms_bank.high">(),
                    .source = "tubular-catalogue-tolerance"};
    if (has_bank()) {
        const ElementResistance at20 = cold_bank();
        bank.low = at20.low_ohm;
        bank.typical = at20.typical_ohm;
        bank.high = at20.high_ohm;
        bank.expect = say<"meter.ohms_bank.expect">(with<"span">(span(bank)),
                                                    with<"hookup">(circuit_.bank.label()));
        const Sentence open = ohms_with_one_open(*bank.typical);
        if (!open.empty()) bank.expect = sentence_of({bank.expect, open});
    }
    add(bank);
}

void CheckWriter::insulation() {
    constexpr double test_v = 500.0;
    constexpr double new_mohm = 20.0;
    constexpr double used_mohm = 1.0;
    add({.reading = say<"meter.insulation">(),
         .how = say<"meter.insulation.how">(with<"volts">(test_v, unit::volt)),
         .expect = say<"meter.insulation.expect">(with<"fresh">(new_mohm, unit::megohm),
                                                  with<"used">(used_mohm, unit::megohm)),
         .low = used_mohm,
         .unit = unit::megohm,
         .if_low = say<"meter.insulation.low">(),
         .source = no_source});
}

void CheckWriter::expect_of_unlike(MeterCheck& open, MeterCheck& shorted, double cell_c) const {
    const UnlikeArray& array = *circuit_.unlike;
    const auto volts_of = [cell_c](const UnlikeArray& strings) {
        return strings.curve(PanelState::today, stc_irradiance_w_m2, cell_c)
            .open_circuit_voltage_v();
    };
    constexpr int four = 4;
    open.typical = volts_of(array);
    Sentences each;
    for (const auto& string : array.strings) {
        UnlikeArray alone = array;
        alone.strings = {string};
        each.push_back(sentence_of(Amount{volts_of(alone), unit::volt, four}));
    }
    open.expect = say<"meter.open_volts.unlike">(with<"volts">(*open.typical, unit::volt, four),
                                                 with<"cells">(cell_c, unit::celsius),
                                                 with<"strings">(std::move(each)));
    const auto amperes_of = [&array](PanelState state) {
        return array.curve(state, stc_irradiance_w_m2, stc_temperature_c).short_circuit_current_a();
    };
    shorted.low = amperes_of(PanelState::weak);
    shorted.typical = amperes_of(PanelState::today);
    shorted.high = amperes_of(PanelState::strong);
    shorted.expect = say<"meter.short_amperes.expect">(
        with<"span">(span(shorted)), with<"sun">(stc_irradiance_w_m2, unit::watt_per_m2));
}

void CheckWriter::array(double cell_c) {
    MeterCheck open{
        .reading = say<"meter.open_volts">(),
        .how = say<"meter.open_volts.how">(with<"colder">(cell_above_back_k, unit::kelvin)),
        .expect = say<"meter.not_known">(),
        .unit = unit::volt,
        .if_low = say<"meter.open_volts.low">(),
        .if_high = say<"meter.open_volts.high">(),
        .source = circuit_.kinds_of_panels().front()->panel.provenance.source};
    MeterCheck shorted{.reading = say<"meter.short_amperes">(),
                       .how = say<"meter.short_amperes.how">(),
                       .expect = say<"meter.not_known">(),
                       .unit = unit::ampere,
                       .if_low = say<"meter.short_amperes.low">(),
                       .if_high = say<"meter.short_amperes.high">(),
                       .source = open.source};
    if (circuit_.unlike) {
        expect_of_unlike(open, shorted, cell_c);
    } else if (has_panel()) {
        const PanelInService& service = circuit_.panel;
        const Hookup& hookup = circuit_.panels;
        constexpr double label_c = 25.0;
        constexpr int four = 4;
        const double beta = service.panel.beta_voc_pct_per_k.value_or(0.0) / 100.0;
        const double at25 = service.panel.v_oc * service.voltage_factor;
        open.typical = hookup.series * at25 * (1.0 + beta * (cell_c - label_c));
        // The temperatures of the formula are in the unit of its coefficient.
        const auto factor = [&]() -> Sentence {
            if (beta == 0.0 || cell_c == label_c) return {};
            const auto whole = with<"whole">(1.0);
            const auto size = with<"beta">(std::fabs(beta));
            const auto cells = with<"cells_c">(cell_c);
            const auto label = with<"label_c">(label_c);
            return beta < 0.0 ? say<"meter.open_volts.falls">(whole, size, cells, label)
                              : say<"meter.open_volts.rises">(whole, size, cells, label);
        };
        Sentences told{say<"meter.open_volts.expect">(
            with<"volts">(*open.typical, unit::volt, four), with<"cells">(cell_c, unit::celsius),
            with<"series">(hookup.series, unit::count), with<"each">(at25, unit::volt, four),
            with<"factor">(factor()))};
        if (const auto sections = bypass_sections(service.panel)) {
            const double section = *open.typical / hookup.series / *sections;
            open.low = *open.typical - section;
            told.push_back(say<"meter.open_volts.section">(with<"section">(section, unit::volt),
                                                           with<"left">(*open.low, unit::volt)));
            if (hookup.parallel > 1) told.push_back(say<"meter.open_volts.strings">());
        } else {
            sheet_.missing.push_back(
                say<"meter.open_volts.not_known">(with<"panel">(service.panel.id)));
        }
        open.expect = sentence_of(told);
        const double each_a = service.panel.i_sc * hookup.parallel;
        shorted.low = each_a * service.current_factor_low;
        shorted.typical = each_a * service.current_factor;
        shorted.high = each_a * service.current_factor_high;
        shorted.expect = say<"meter.short_amperes.expect">(with<"span">(span(shorted)),
                                                           with<"sun">(1000.0, unit::watt_per_m2));
    }
    add(open);
    add(shorted);
}

std::optional<int> bypass_sections(const Panel& panel) {
    if (!panel.bypass_diodes) return std::nullopt;
    return std::max(1, *panel.bypass_diodes);
}

void add_meter_checks(MeterSheet& sheet, const Candidate& candidate,
                      const MeterSheetOptions& options) {
    CheckWriter writer(sheet, candidate);
    writer.ohms();
    writer.insulation();
    writer.array(options.uncovered_cell_c);
    writer.loads();
    writer.earth();
    writer.joints();
    writer.limits();
    writer.store();
}

}  // namespace heatmatch
