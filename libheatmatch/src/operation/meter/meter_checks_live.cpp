#include "meter_checks.hpp"

#include <algorithm>

namespace heatmatch {

void CheckWriter::loads() {
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
        cold_ohm +=
            share * (2.0 * parts.run.length_m * resistance_ohm_per_m(*parts.wire, cold_element_c) +
                     parts.run.joint_ohm.value_or(0.0));
        if (!parts.run.joint_ohm) {
            sheet_.not_known.push_back("joint_ohm " + name +
                                       ": measure volts across its joints and divide by the "
                                       "amperes; they count as 0 in the loop");
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

void CheckWriter::earth() {
    add({.reading = "volts of + and - to earth",
         .how = "Array connected to nothing, a meter of 10 Mohm or so from + to earth, then from - "
                "to earth.",
         .expect =
             "Drifting and small, not a steady share of the open volts. Steady readings V+ "
             "and V- mean a leak |V-| / (|V+| + |V-|) of the way up from the negative end, of "
             "Rm (Voc / (|V+| + |V-|) - 1) ohms with a meter of Rm.",
         .unit = unit::volt,
         .if_high = "Find and mend the leak before the next one: a second fault can burn or kill.",
         .source = no_source});
}

void CheckWriter::joints() {
    add({.reading = "each joint above its box",
         .how = "After an hour at noon, thermocouple or infrared meter; tape or black paint on "
                "shiny metal first.",
         .expect = "Less than " + q(15.0, unit::kelvin) + " above the air in its box.",
         .high = 15.0,
         .unit = unit::kelvin,
         .if_high = "Remake the joint, cold and disconnected.",
         .source = no_source});
}

void CheckWriter::limits() {
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
                     .source = no_source};
    const auto found = std::find_if(
        circuit_.devices.begin(), circuit_.devices.end(), [](const PlacedDevice& placed) {
            const std::string& reset = placed.control.reset;
            const bool holds_open = reset == "manual" || reset == "latching" || reset == "replace";
            return placed.device.duty == "senses only" && holds_open;
        });
    constexpr double trip_k = 5.0;
    if (found == circuit_.devices.end()) {
        limit.expect = "not known: no limit that holds open is described. " + limit.expect;
        sheet_.not_known.emplace_back(
            "devices: add the independent limit (senses only, not reset by itself)");
    } else if (!found->device.set_c) {
        limit.expect = "not known. " + limit.expect;
        sheet_.not_known.push_back("set_c of device \"" + found->device.part +
                                   "\": read the set point from its body");
    } else {
        limit.typical = *found->device.set_c;
        limit.low = *limit.typical - trip_k;
        limit.high = *limit.typical + trip_k;
        limit.expect = q(*limit.typical, unit::celsius) + ". " + limit.expect;
    }
    add(limit);
}

void CheckWriter::store() {
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

}  // namespace heatmatch
