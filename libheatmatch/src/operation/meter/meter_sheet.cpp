#include "heatmatch/operation/meter/meter_sheet.hpp"

#include "meter_checks.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/cell_temperature.hpp"

namespace heatmatch {

using meter_sentences::say;

namespace {

void check_number(double value, const char* field, const Range& range, const Unit& unit) {
    if (std::isfinite(value) && range.holds(value)) return;
    throw InvalidInput(ErrorDetail{.part = "meter sheet",
                                   .field = field,
                                   .value = format_quantity(value, unit, UnitSystem::si),
                                   .allowed = range.text(unit),
                                   .remedy = say<"meter.correct_option">()});
}

void check_options(const MeterSheetOptions& options) {
    constexpr Range sun{.low = 0.0, .high = 1600.0, .low_open = true};
    for (const double g : options.irradiance_w_m2) {
        check_number(g, "irradiance_w_m2", sun, unit::watt_per_m2);
    }
    check_number(options.air_c, "air_c", {.low = -60.0, .high = 60.0}, unit::celsius);
    check_number(options.uncovered_cell_c, "uncovered_cell_c", {.low = -60.0, .high = 110.0},
                 unit::celsius);
}

/// Readings with the panels at one end of their current and the bank at one of its resistances.
struct PointReadings {
    double open_v = 0.0;
    double short_a = 0.0;
    double array_v = 0.0;
    double bank_v = 0.0;
    double bank_a = 0.0;
};

struct SheetSun {
    double irradiance_w_m2 = 0.0;
    double cell_temperature_c = 0.0;
};

PointReadings readings_at(const Circuit& circuit, PanelState state, double bank_ohm,
                          const SheetSun& sun) {
    const auto read = [&](const auto& curve) {
        const OperatingPoint point = curve.into_resistance(bank_ohm + circuit.wire_ohm());
        return PointReadings{.open_v = curve.open_circuit_voltage_v(),
                             .short_a = curve.short_circuit_current_a(),
                             .array_v = point.voltage_v,
                             .bank_v = point.current_a * bank_ohm,
                             .bank_a = point.current_a};
    };
    if (circuit.unlike) {
        return read(circuit.unlike->curve(state, sun.irradiance_w_m2, sun.cell_temperature_c));
    }
    return read(Array{.panel = panel_as(circuit.panel, state),
                      .series = circuit.panels.series,
                      .parallel = circuit.panels.parallel,
                      .drop_v = circuit.panel.blocking_v()}
                    .at(sun.irradiance_w_m2, sun.cell_temperature_c));
}

MeterRow row_at(const Circuit& circuit, double g, double t) {
    const Bank& bank = circuit.bank;
    const auto at = [&](PanelState state, double ohm) {
        return readings_at(circuit, state, ohm, {g, t});
    };
    const PointReadings typical = at(PanelState::today, bank.typical_ohm());
    // Voltage rises with current and resistance; current rises with that of the panels and falls
    // with resistance.
    const PointReadings weak_low = at(PanelState::weak, bank.low_ohm());
    const PointReadings weak_high = at(PanelState::weak, bank.high_ohm());
    const PointReadings strong_low = at(PanelState::strong, bank.low_ohm());
    const PointReadings strong_high = at(PanelState::strong, bank.high_ohm());
    const Delivered power = deliver(circuit, g, t);
    // Rounding of equal values must not invert a band.
    const auto band = [](double low, double middle, double high) {
        return ExpectedBand{std::min(low, middle), middle, std::max(high, middle)};
    };
    return {.irradiance_w_m2 = g,
            .cell_temperature_c = t,
            .open_v = band(weak_low.open_v, typical.open_v, strong_low.open_v),
            .short_a = band(weak_low.short_a, typical.short_a, strong_low.short_a),
            .array_v = band(weak_low.array_v, typical.array_v, strong_high.array_v),
            .bank_v = band(weak_low.bank_v, typical.bank_v, strong_high.bank_v),
            .bank_a = band(weak_high.bank_a, typical.bank_a, strong_low.bank_a),
            .bank_w = band(power.power_low_w, power.power_w, power.power_high_w)};
}

void add_assumed(MeterSheet& sheet, const std::vector<Assumption>& more) {
    for (const Assumption& assumption : more) {
        if (std::find(sheet.assumed.begin(), sheet.assumed.end(), assumption) ==
            sheet.assumed.end()) {
            sheet.assumed.push_back(assumption);
        }
    }
}

void add_rows(MeterSheet& sheet, const Circuit& circuit, const MeterSheetOptions& options) {
    // Of unlike panels the mean; each differs from it by a few kelvin.
    double noct_c = 0.0;
    const auto kinds = circuit.kinds_of_panels();
    for (const PanelInService* kind : kinds) {
        noct_c += kind->panel.noct_c.value_or(usual_noct_c) / static_cast<double>(kinds.size());
        if (kind->panel.noct_c) continue;
        add_assumed(sheet, {{.part = "panel \"" + kind->panel.id + '"',
                             .field = "noct_c",
                             .value = sentence_of(Amount{usual_noct_c, unit::celsius}),
                             .source = sentence_of(Name{"from memory"})}});
    }
    for (const double g : options.irradiance_w_m2) {
        sheet.rows.push_back(row_at(circuit, g, noct_cell_temperature_c(g, options.air_c, noct_c)));
    }
    for (const double g : options.irradiance_w_m2) {
        sheet.rows.push_back(row_at(circuit, g, options.uncovered_cell_c));
    }
}

Sentence amperes_span(const ExpectedBand& band, double share = 1.0) {
    return say<"meter.span">(with<"low">(share * band.low, unit::ampere),
                             with<"high">(share * band.high, unit::ampere),
                             with<"typical">(share * band.typical, unit::ampere));
}

/// The ratio at the bank, the array as sun meter, and where to read on.
void add_without_sun_meter(MeterSheet& sheet, const Circuit& circuit) {
    const auto ratio =
        std::find_if(sheet.checks.begin(), sheet.checks.end(),
                     [](const MeterCheck& check) { return check.reading == say<"meter.ratio">(); });
    if (sheet.rows.empty() || ratio == sheet.checks.end() || !ratio->low || !ratio->high) return;
    constexpr double full_sun_w_m2 = 1000.0;
    constexpr double cells_c = 25.0;
    const MeterRow full = row_at(circuit, full_sun_w_m2, cells_c);
    const auto sun = with<"sun">(full_sun_w_m2, unit::watt_per_m2);
    Sentences& told = sheet.without_sun_meter;
    told.push_back(say<"meter.no_sun">());
    told.push_back(say<"meter.no_sun.ratio">(with<"low">(*ratio->low, unit::ohm),
                                             with<"high">(*ratio->high, unit::ohm)));
    told.push_back(say<"meter.no_sun.outside">());
    told.push_back(say<"meter.no_sun.array">(
        with<"span">(amperes_span(full.short_a)), sun,
        with<"each">(full_sun_w_m2 / full.short_a.typical, unit::watt_per_m2)));
    if (!circuit.unlike) {
        const double share = 1.0 / circuit.panels.parallel;
        told.push_back(say<"meter.no_sun.panel">(
            with<"group">(circuit.owned.group),
            with<"amperes">(share * full.short_a.typical, unit::ampere), sun));
    }
    told.push_back(say<"meter.no_sun.row">());
}

void add_remarks(MeterSheet& sheet, const Bank& bank) {
    if (!bank.fixed()) {
        sheet.remarks.push_back(say<"meter.changing_ohms">(with<"element">(bank.element.id)));
    }
    sheet.remarks.push_back(
        say<"meter.bands">(with<"meter">(100.0 * sheet_meter_error, unit::percent),
                           with<"sun_meter">(100.0 * sheet_sun_meter_error, unit::percent)));
    sheet.remarks.push_back(
        say<"meter.back_of_panel">(with<"colder">(cell_above_back_k, unit::kelvin)));
    sheet.remarks.push_back(say<"meter.sun_by_current">());
    sheet.remarks.push_back(say<"meter.no_load_break">());
}

}  // namespace

MeterSheet meter_sheet(const Candidate& candidate, const MeterSheetOptions& options) {
    check_options(options);
    const Circuit& circuit = candidate.circuit;
    MeterSheet sheet{.title = sentence_of(Name{circuit.title()})};
    for (const PanelInService* kind : circuit.kinds_of_panels()) add_assumed(sheet, kind->assumed);
    add_assumed(sheet, circuit.bank.assumed());
    const bool has_panel = circuit.has_panels();
    const bool has_bank = circuit.bank.typical_ohm() > 0.0;
    if (!has_panel) sheet.missing.push_back(say<"meter.name_panel">());
    if (!has_bank) sheet.missing.push_back(say<"meter.name_element">());
    if (has_panel && has_bank) add_rows(sheet, circuit, options);
    add_meter_checks(sheet, candidate, options);
    add_without_sun_meter(sheet, circuit);
    add_remarks(sheet, circuit.bank);
    return sheet;
}

}  // namespace heatmatch
