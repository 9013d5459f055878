#include "meter_checks.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

using meter_sentences::say;

void CheckWriter::loads() {
    MeterCheck ratio{.reading = say<"meter.ratio">(),
                     .how = say<"meter.ratio.how">(),
                     .expect = say<"meter.not_known">(),
                     .unit = unit::ohm,
                     .if_low = say<"meter.ohms_bank.low">(),
                     .if_high = say<"meter.ratio.high">(),
                     .source = circuit_.bank.alloy ? circuit_.bank.alloy->provenance.source
                                                   : std::string("gb-t-1234")};
    if (has_bank()) {
        const ElementResistance at20 = cold_bank();
        ratio.low = std::min(at20.low_ohm, circuit_.bank.low_ohm());
        ratio.typical = circuit_.bank.typical_ohm();
        ratio.high = std::max(at20.high_ohm, circuit_.bank.high_ohm());
        ratio.expect = say<"meter.ratio.expect">(
            with<"span">(span(ratio)), with<"cold">(at20.typical_ohm, unit::ohm),
            with<"hot">(*ratio.typical, unit::ohm),
            with<"coil">(circuit_.bank.coil_temperature_c, unit::celsius));
    }
    add(ratio);
    element_volts();
    drop();

    MeterCheck now{.reading = say<"meter.now">(),
                   .how = say<"meter.now.how">(),
                   .expect = say<"meter.not_known">(),
                   .unit = unit::ampere,
                   .if_low = say<"meter.now.low">(),
                   .if_high = say<"meter.now.high">(),
                   .source = "de-soto-2006"};
    if (!sheet_.rows.empty()) {
        const MeterRow& row = sheet_.rows.front();
        now.low = row.bank_a.low;
        now.typical = row.bank_a.typical;
        now.high = row.bank_a.high;
        now.expect = say<"meter.now.expect">(with<"span">(span(now)),
                                             with<"sun">(row.irradiance_w_m2, unit::watt_per_m2),
                                             with<"cells">(row.cell_temperature_c, unit::celsius));
    }
    add(now);
}

/// Of unlike elements, each one's share of the voltage of the bank in the first row.
void CheckWriter::element_volts() {
    const Bank& bank = circuit_.bank;
    if (!bank.unlike || sheet_.rows.empty()) return;
    const UnlikeBank& unlike = *bank.unlike;
    const MeterRow& row = sheet_.rows.front();
    const std::vector<double> low = unlike.ohms(&ElementResistance::low_ohm);
    const std::vector<double> high = unlike.ohms(&ElementResistance::high_ohm);
    const auto typical =
        unlike.tree.at_voltage(unlike.ohms(&ElementResistance::typical_ohm), row.bank_v.typical);
    for (const std::size_t at : unlike.distinct()) {
        // At a corner of all resistances its share of the volts is least, and at one most.
        double least = 1.0;
        double most = 0.0;
        for (std::size_t corner = 0; corner < std::size_t{1} << low.size(); ++corner) {
            std::vector<double> ohm = low;
            for (std::size_t i = 0; i < ohm.size(); ++i) {
                if (((corner >> i) & 1U) != 0) ohm[i] = high[i];
            }
            const double share = unlike.tree.at_voltage(ohm, 1.0)[at].voltage_v;
            least = std::min(least, share);
            most = std::max(most, share);
        }
        MeterCheck volts{
            .reading = say<"meter.element_volts">(with<"element">(Name{unlike.title_of(at)})),
            .how = say<"meter.element_volts.how">(),
            .low = row.bank_v.low * least,
            .typical = typical[at].voltage_v,
            .high = row.bank_v.high * most,
            .unit = unit::volt,
            .if_low = say<"meter.element_volts.low">(),
            .if_high = say<"meter.element_volts.high">(),
            .source = "de-soto-2006"};
        volts.expect = say<"meter.now.expect">(
            with<"span">(span(volts)), with<"sun">(row.irradiance_w_m2, unit::watt_per_m2),
            with<"cells">(row.cell_temperature_c, unit::celsius));
        add(volts);
    }
}

void CheckWriter::drop() {
    MeterCheck drop{.reading = say<"meter.drop">(),
                    .how = say<"meter.drop.how">(),
                    .expect = say<"meter.not_known">(),
                    .unit = unit::ohm,
                    .if_low = say<"meter.drop.low">(),
                    .if_high = say<"meter.drop.high">(),
                    .source = "iec-60028"};
    double cold_ohm = 0.0;
    bool known = !circuit_.runs.empty();
    for (const RunParts& parts : circuit_.runs) {
        const std::string& name = parts.run.name;
        if (!parts.wire) {
            known = false;
            sheet_.missing.push_back(say<"meter.drop.wire">(with<"run">(name)));
            continue;
        }
        const double share = circuit_.wire_share(parts.run);
        cold_ohm +=
            share * (2.0 * parts.run.length_m * resistance_ohm_per_m(*parts.wire, cold_element_c) +
                     parts.run.joint_ohm.value_or(0.0));
        if (!parts.run.joint_ohm) {
            sheet_.missing.push_back(
                say<"meter.drop.joint">(with<"run">(name), with<"nothing">(0.0)));
        }
    }
    if (circuit_.runs.empty()) sheet_.missing.push_back(say<"meter.drop.runs">());
    if (known) {
        const double ohm = circuit_.wire_ohm();
        drop.low = std::min(cold_ohm, ohm);
        drop.typical = ohm;
        Sentences told{say<"meter.drop.expect">(with<"ohms">(ohm, unit::ohm),
                                                with<"cold">(cold_ohm, unit::ohm))};
        if (!sheet_.rows.empty()) {
            const double current_a = sheet_.rows.front().bank_a.typical;
            told.push_back(say<"meter.drop.volts">(with<"current">(current_a, unit::ampere),
                                                   with<"volts">(current_a * ohm, unit::volt)));
        }
        drop.expect = sentence_of(told);
    }
    add(drop);
}

void CheckWriter::earth() {
    constexpr double meter_mohm = 10.0;
    add({.reading = say<"meter.earth">(),
         .how = say<"meter.earth.how">(with<"meter">(meter_mohm, unit::megohm)),
         .expect = say<"meter.earth.expect">(with<"whole">(1.0)),
         .unit = unit::volt,
         .if_high = say<"meter.earth.high">(),
         .source = no_source});
}

void CheckWriter::joints() {
    constexpr double most_k = 15.0;
    add({.reading = say<"meter.joints">(),
         .how = say<"meter.joints.how">(),
         .expect = say<"meter.joints.expect">(with<"rise">(most_k, unit::kelvin)),
         .high = most_k,
         .unit = unit::kelvin,
         .if_high = say<"meter.joints.high">(),
         .source = no_source});
}

void CheckWriter::limits() {
    constexpr double trip_k = 5.0;
    MeterCheck limit{.reading = say<"meter.limit">(),
                     .how = say<"meter.limit.how">(),
                     .unit = unit::celsius,
                     .if_low = say<"meter.limit.low">(),
                     .if_high = say<"meter.limit.high">(),
                     .source = no_source};
    const Sentence trips =
        say<"meter.limit.trips">(with<"within">(trip_k, unit::kelvin), with<"nothing">(0.0));
    const auto found = std::find_if(
        circuit_.devices.begin(), circuit_.devices.end(), [](const PlacedDevice& placed) {
            return placed.device.duty == Duty::senses_only && stays_open(placed.control);
        });
    if (found == circuit_.devices.end()) {
        limit.expect = say<"meter.limit.none">(with<"trips">(trips));
        sheet_.missing.push_back(say<"meter.limit.add">());
    } else if (!found->device.set_c) {
        limit.expect = say<"meter.limit.no_set_point">(with<"trips">(trips));
        sheet_.missing.push_back(
            say<"meter.limit.read_set_point">(with<"device">(found->device.part)));
    } else {
        limit.typical = *found->device.set_c;
        limit.low = *limit.typical - trip_k;
        limit.high = *limit.typical + trip_k;
        limit.expect = say<"meter.limit.expect">(with<"set">(*limit.typical, unit::celsius),
                                                 with<"trips">(trips));
    }
    add(limit);
}

void CheckWriter::store() {
    MeterCheck check{.reading = say<"meter.store">(),
                     .how = say<"meter.store.how">(),
                     .expect = say<"meter.not_known">(),
                     .unit = unit::celsius,
                     .if_low = say<"meter.store.low">(),
                     .if_high = say<"meter.store.high">(),
                     .source = "carslaw-jaeger"};
    const auto& heat = circuit_.heat;
    if (!heat) {
        sheet_.missing.push_back(say<"meter.store.describe">());
    } else if (!heat->known()) {
        for (const auto& field : heat->missing) {
            sheet_.missing.push_back(say<"meter.store.needed">(with<"field">(field)));
        }
        if (!heat->misfit.empty()) {
            check.expect = say<"meter.store.misfit">(with<"misfit">(heat->misfit));
        }
    } else if (!sheet_.rows.empty()) {
        if (heat->liquid) {
            check.how = say<"meter.store.how_in_liquid">();
            check.if_low = say<"meter.store.low_in_liquid">();
            check.if_high = say<"meter.store.high_in_liquid">();
        }
        const Bank& bank = circuit_.bank;
        const double bank_w = sheet_.rows.front().bank_w.typical;
        if (!bank.unlike) return store_of(check, *heat, bank_w / bank.hookup.count());
        std::vector<double> element_w = bank.unlike->power_shares();
        for (double& each : element_w) each *= bank_w;
        for (const std::size_t i : bank.unlike->distinct()) {
            check.reading = say<"meter.store_of">(with<"element">(Name{bank.unlike->title_of(i)}));
            store_of(check, *element_view(circuit_, i, element_w).heat, element_w[i]);
        }
        return;
    }
    add(check);
}

void CheckWriter::store_of(MeterCheck check, const BankHeat& heat, double element_w) {
    const HeatPoint point = heat.at(element_w);
    check.low = point.sheath_band.low_c;
    check.typical = point.sheath_band.typical_c;
    check.high = point.sheath_band.high_c;
    check.expect = say<"meter.store.expect">(
        with<"span">(span(check)), with<"bulk">(point.bed_mean_c, unit::celsius),
        with<"power">(sheet_.rows.front().bank_w.typical, unit::watt),
        with<"hours">(heat.store->charge_hours, unit::hour));
    if (heat.store->other_circuits() > 0) {
        check.how = say<"meter.store.with_others">(with<"how">(check.how));
    }
    for (const Assumption& assumed : heat.assumed) {
        if (std::find(sheet_.assumed.begin(), sheet_.assumed.end(), assumed) ==
            sheet_.assumed.end()) {
            sheet_.assumed.push_back(assumed);
        }
    }
    add(std::move(check));
}

}  // namespace heatmatch
