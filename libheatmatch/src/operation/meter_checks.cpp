#include "meter_checks.hpp"

#include <algorithm>

#include "heatmatch/heat/element_resistance.hpp"

namespace heatmatch {

namespace {

constexpr double cold_c = 20.0;
constexpr const char* common_practice = "common practice, no source";

/// Writes the checks of one sheet.
class Writer {
  public:
    Writer(MeterSheet& sheet, const Candidate& candidate, UnitSystem units)
        : sheet_(sheet),
          candidate_(candidate),
          circuit_(candidate.circuit),
          units_(units),
          alloy_(circuit_.bank.alloy ? &*circuit_.bank.alloy : nullptr) {}

    void ohms();
    void insulation();
    void array(double cell_c);
    void loads();
    void earth();
    void joints();
    void limits();
    void store();

  private:
    void add(MeterCheck check) {
        check.letter = std::string(1, static_cast<char>('A' + sheet_.checks.size()));
        sheet_.checks.push_back(std::move(check));
    }
    [[nodiscard]] std::string q(double value, const Unit& unit, int digits = 3) const {
        return format_quantity(value, unit, units_, digits);
    }
    [[nodiscard]] std::string span(const MeterCheck& check) const {
        return q(*check.low, check.unit) + " to " + q(*check.high, check.unit) + ", typically " +
               q(*check.typical, check.unit);
    }
    [[nodiscard]] bool has_bank() const { return circuit_.bank.each.typical_ohm > 0.0; }
    [[nodiscard]] bool has_panel() const { return circuit_.panel.panel.v_oc > 0.0; }
    [[nodiscard]] ElementResistance cold() const {
        return element_resistance(circuit_.bank.element, alloy_, cold_c);
    }

    MeterSheet& sheet_;
    const Candidate& candidate_;
    const Circuit& circuit_;
    UnitSystem units_;
    const Alloy* alloy_;
};

void Writer::ohms() {
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
        each.expect = span(each) + " at " + q(cold_c, unit::celsius) + " (" + at20.basis + ").";
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

void Writer::insulation() {
    add({.reading = "insulation of the sheath",
         .how =
             "Element disconnected at both ends, 500 V dc test set from terminals to sheath, one "
             "minute. Not through controls or panels.",
         .expect = "Above 20 Mohm new, above 1 Mohm in service; it rises as the element dries.",
         .low = 1.0,
         .unit = unit::megohm,
         .if_low = "Damp magnesia: bake it or warm it at half its volts, then measure again; if it "
                   "stays low, replace the element.",
         .source = common_practice});
}

void Writer::array(double cell_c) {
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

void Writer::loads() {
    MeterCheck ratio{.reading = "volts over amperes at the bank",
                     .how = "Volts across the bank, dc clamp on its wire, both at once.",
                     .expect = "not known",
                     .unit = unit::ohm,
                     .if_low = "Turns are shorted, or the bank is hooked up otherwise.",
                     .if_high = "An element is open, or a joint between the meter's tips is bad.",
                     .source = circuit_.bank.alloy ? circuit_.bank.alloy->provenance.source
                                                   : std::string("gb-t-1234")};
    if (has_bank()) {
        const ElementResistance at20 = cold();
        const double share = circuit_.bank.hookup.resistance_factor();
        ratio.low = std::min(at20.low_ohm * share, circuit_.bank.low_ohm());
        ratio.typical = circuit_.bank.typical_ohm();
        ratio.high = std::max(at20.high_ohm * share, circuit_.bank.high_ohm());
        ratio.expect = span(ratio) + " in any weather: " + q(at20.typical_ohm * share, unit::ohm) +
                       " cold, " + q(*ratio.typical, unit::ohm) + " with the coil at " +
                       q(circuit_.bank.coil_temperature_c, unit::celsius) + '.';
    }
    add(ratio);

    MeterCheck drop{.reading = "volts at the array less volts at the bank, over amperes",
                    .how =
                        "Volts across the array's wires, then across the bank, at the same "
                        "current.",
                    .expect = "not known",
                    .unit = unit::ohm,
                    .if_low = "A shorter run than described.",
                    .if_high =
                        "A hot joint or thin wire: touch-scan the joints with an infrared "
                        "meter, shiny metal taped.",
                    .source = "iec-60028"};
    double cold_ohm = 0.0;
    bool known = !circuit_.runs.empty();
    for (const RunParts& parts : circuit_.runs) {
        const std::string name = "of run \"" + parts.run.name + '"';
        if (!parts.wire) {
            known = false;
            sheet_.not_known.push_back("wire " + name + ": name the wire that is there");
            continue;
        }
        const double share = circuit_.current_share(parts.run);
        cold_ohm += share * (2.0 * parts.run.length_m * resistance_ohm_per_m(*parts.wire, cold_c) +
                             parts.run.joint_ohm.value_or(0.0));
        if (!parts.run.joint_ohm) {
            sheet_.not_known.push_back("joint_ohm " + name +
                                       ": measure volts across its joints and divide by the "
                                       "amperes; they count as 0 here");
        }
    }
    if (circuit_.runs.empty()) {
        sheet_.not_known.emplace_back("runs: describe the wire between array and bank");
    }
    if (known) {
        const double ohm = circuit_.wire_ohm();
        drop.low = std::min(cold_ohm, ohm);
        drop.typical = ohm;
        drop.expect =
            q(ohm, unit::ohm) + " of wire and joints, " + q(cold_ohm, unit::ohm) + " of it cold.";
        if (!sheet_.rows.empty()) {
            const MeterRow& row = sheet_.rows.front();
            drop.expect += " At " + q(row.bank_a.typical, unit::ampere) + " that is " +
                           q(row.bank_a.typical * ohm, unit::volt) + '.';
        }
    }
    add(drop);

    MeterCheck now{.reading = "amperes of the bank now",
                   .how = "Dc clamp, with the sun on the plane of the panels.",
                   .expect = "not known",
                   .unit = unit::ampere,
                   .if_low = "Less sun than believed, dirt, age, or more ohms than described.",
                   .if_high = "More sun than believed, or fewer ohms.",
                   .source = "de-soto-2006"};
    if (!sheet_.rows.empty()) {
        const MeterRow& row = sheet_.rows.front();
        now.low = row.bank_a.low;
        now.typical = row.bank_a.typical;
        now.high = row.bank_a.high;
        now.expect = span(now) + " in " + q(row.irradiance_w_m2, unit::watt_per_m2) +
                     " with cells at " + q(row.cell_temperature_c, unit::celsius) +
                     "; the table has less sun. Never more than the short-circuit amperes.";
    }
    add(now);
}

void Writer::earth() {
    add({.reading = "volts of + and - to earth",
         .how = "Array connected to nothing, a meter of 10 Mohm or so from + to earth, then from - "
                "to earth.",
         .expect =
             "Drifting and small, not a steady share of the open volts. Steady readings V+ "
             "and V- mean a leak |V-| / (|V+| + |V-|) of the way up from the negative end, of "
             "Rm (Voc / (|V+| + |V-|) - 1) ohms with a meter of Rm.",
         .unit = unit::volt,
         .if_high = "Find and mend the leak before the next one: a second fault can burn or kill.",
         .source = common_practice});
}

void Writer::joints() {
    add({.reading = "each joint above its box",
         .how = "After an hour at noon, thermocouple or infrared meter; tape or black paint on "
                "shiny metal first.",
         .expect = "Less than " + q(15.0, unit::kelvin) + " above the air in its box.",
         .high = 15.0,
         .unit = unit::kelvin,
         .if_high = "Remake the joint, cold and disconnected.",
         .source = common_practice});
}

void Writer::limits() {
    MeterCheck limit{.reading = "trip of the independent limit",
                     .how =
                         "Warm its sensor by itself in oil or with a hot-air gun, beside a "
                         "thermometer; watch the volts at the bank.",
                     .expect = "Trips within " + q(5.0, unit::kelvin) +
                               " of its set point; the volts at the bank go to 0 and stay there "
                               "until it is reset.",
                     .unit = unit::celsius,
                     .if_low = "Replace it.",
                     .if_high = "Replace it before the store is heated again.",
                     .source = common_practice};
    const bool has_limit = std::any_of(
        circuit_.devices.begin(), circuit_.devices.end(), [&](const PlacedDevice& placed) {
            const std::string& reset = placed.control.reset;
            const bool holds_open = reset == "manual" || reset == "latching" || reset == "replace";
            return placed.device.duty == "senses only" && holds_open;
        });
    if (!has_limit) {
        limit.expect = "not known: no limit that holds open is described. " + limit.expect;
        sheet_.not_known.emplace_back(
            "devices: add the independent limit (senses only, reset by hand or once)");
    } else {
        sheet_.not_known.emplace_back(
            "set point of the limit: read it from its body and write it beside this check");
    }
    add(limit);
}

void Writer::store() {
    MeterCheck check{.reading = "temperatures of the store",
                     .how =
                         "Thermocouples at the sheath, in the bulk and at the wall; at sunset "
                         "and at dawn.",
                     .expect = "not known",
                     .unit = unit::celsius,
                     .if_low = "Less heat than believed, damp, or more loss through the wall.",
                     .if_high = "Settled or drier fill: fit its conductivity to the readings.",
                     .source = "carslaw-jaeger"};
    const auto& heat = circuit_.heat;
    if (!heat) {
        sheet_.not_known.emplace_back("store: describe it, with its medium and sizes");
    } else if (!heat->known()) {
        for (const std::string& field : heat->missing) {
            sheet_.not_known.push_back(field + ": needed for the temperatures of the store");
        }
        if (!heat->misfit.empty()) check.expect = "not known: " + heat->misfit;
    } else if (!sheet_.rows.empty()) {
        const MeterRow& row = sheet_.rows.front();
        const HeatPoint point = heat->at(row.bank_w.typical / circuit_.bank.hookup.count());
        check.low = point.sheath_band.low_c;
        check.typical = point.sheath_band.typical_c;
        check.high = point.sheath_band.high_c;
        check.expect = "Sheath " + span(check) + ", bulk about " +
                       q(point.bed_mean_c, unit::celsius) +
                       ", at the end of the third of three "
                       "bright days of " +
                       q(row.bank_w.typical, unit::watt) + " for " +
                       q(heat->store->charge_hours, unit::hour) + '.';
        for (const Assumption& assumed : heat->assumed) {
            if (std::find(sheet_.assumed.begin(), sheet_.assumed.end(), assumed) ==
                sheet_.assumed.end()) {
                sheet_.assumed.push_back(assumed);
            }
        }
    }
    add(check);
}

}  // namespace

std::optional<int> bypass_sections(const Panel& panel) {
    if (!panel.bypass_diodes) return std::nullopt;
    return std::max(1, *panel.bypass_diodes);
}

void add_meter_checks(MeterSheet& sheet, const Candidate& candidate,
                      const MeterSheetOptions& options) {
    Writer writer(sheet, candidate, options.units);
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
