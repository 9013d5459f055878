#include "meter_checks.hpp"

#include <algorithm>

namespace heatmatch {

void CheckWriter::ohms() {
    MeterCheck each{.reading = "ohms of one element, cold",
                    .how =
                        "Disconnected, ohmmeter across its two ends; subtract what the leads "
                        "read touched together. Below 2 ohm use a known current.",
                    .expect = "not known",
                    .unit = unit::ohm,
                    .if_low = "Turns are shorted, or it is another element.",
                    .if_high = "A bad joint; no reading at all is a broken coil.",
                    .source = "tubular-catalogue-tolerance"};
    MeterCheck bank = each;
    bank.reading = "ohms of the bank, cold";
    bank.how = "Array disconnected, ohmmeter across the two wires to the bank.";
    bank.if_low = "Turns are shorted, or the bank is hooked up otherwise.";
    bank.if_high = "An element is open, a joint is bad, or it is hooked up otherwise.";
    if (has_bank()) {
        const ElementResistance at20 = cold();
        const Hookup& hookup = circuit_.bank.hookup;
        const double share = hookup.resistance_factor();
        each.low = at20.low_ohm;
        each.typical = at20.typical_ohm;
        each.high = at20.high_ohm;
        each.expect =
            span(each) + " at " + q(cold_element_c, unit::celsius) + " (" + at20.basis + ").";
        bank.low = at20.low_ohm * share;
        bank.typical = at20.typical_ohm * share;
        bank.high = at20.high_ohm * share;
        bank.expect = span(bank) + ": " + hookup.label() + " of the above.";
        const double open = circuit_.bank.with_one_branch_open(*bank.typical);
        if (hookup.parallel > 1) {
            bank.expect += " With one branch open about " + q(open, unit::ohm) + '.';
        }
    }
    add(each);
    add(bank);
}

void CheckWriter::insulation() {
    add({.reading = "insulation of the sheath",
         .how =
             "Element disconnected at both ends, 500 V dc test set from terminals to sheath, one "
             "minute. Not through controls or panels.",
         .expect = "Above 20 Mohm new, above 1 Mohm in service; it rises as the element dries.",
         .low = 1.0,
         .unit = unit::megohm,
         .if_low = "Damp magnesia: bake it or warm it at half its volts, then measure again; if it "
                   "stays low, replace the element.",
         .source = no_source});
}

void CheckWriter::array(double cell_c) {
    MeterCheck open{.reading = "open volts of the array",
                    .how =
                        "Isolator open, volts across the array's two wires; temperature at the "
                        "back of a panel plus 2 K.",
                    .expect = "not known",
                    .unit = unit::volt,
                    .if_low = "A bypassed section or panel: read panel by panel.",
                    .if_high = "Colder cells than read, or another hook-up.",
                    .source = circuit_.panel.panel.provenance.source};
    MeterCheck shorted{
        .reading = "short-circuit amperes of the array",
        .how = "Dc clamp, briefly, through a switch rated to short the array.",
        .expect = "not known",
        .unit = unit::ampere,
        .if_low = "Shade, dirt, age, or a string that is not connected.",
        .if_high = "More sun than the meter says: snow, cloud edge or a tilted meter.",
        .source = circuit_.panel.panel.provenance.source};
    if (has_panel()) {
        const PanelInService& service = circuit_.panel;
        const Hookup& hookup = circuit_.panels;
        const double beta = service.panel.beta_voc_pct_per_k.value_or(0.0) / 100.0;
        const double at25 = service.panel.v_oc * service.voltage_factor;
        open.typical = hookup.series * at25 * (1.0 + beta * (cell_c - 25.0));
        open.expect = q(*open.typical, unit::volt, 4) + " in full sun with cells at " +
                      q(cell_c, unit::celsius) + ": " + std::to_string(hookup.series) + " x " +
                      q(at25, unit::volt, 4) + " x (1 + " + format_number(beta, 3) + " x (" +
                      format_number(cell_c, 3) + " - 25)); the table has it at less sun.";
        if (const auto sections = bypass_sections(service.panel)) {
            const double section = *open.typical / hookup.series / *sections;
            open.low = *open.typical - section;
            open.expect += " One bypassed section lowers a string by " + q(section, unit::volt) +
                           ", to " + q(*open.low, unit::volt) + '.';
            if (hookup.parallel > 1) open.expect += " Read each string by itself.";
        } else {
            sheet_.not_known.push_back(
                "bypass_diodes of panel \"" + service.panel.id +
                "\": count them in its box, so that the volts of a bypassed section are known");
        }
        const double each_a = service.panel.i_sc * hookup.parallel;
        shorted.low = each_a * service.current_factor_low;
        shorted.typical = each_a * service.current_factor;
        shorted.high = each_a * service.current_factor_high;
        shorted.expect =
            span(shorted) + " in " + q(1000.0, unit::watt_per_m2) + "; in proportion to the sun.";
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
    CheckWriter writer(sheet, candidate, options.units);
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
