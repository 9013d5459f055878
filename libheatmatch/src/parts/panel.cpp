#include "heatmatch/parts/panel.hpp"

#include "base/sentences.hpp"
#include "common_fields.hpp"

#include "heatmatch/parts/bifaciality.hpp"

namespace heatmatch {

using parts_sentences::say;

template <>
struct RowShape<ListedFit> {
    static std::vector<double> to_row(const ListedFit& fit) {
        return {fit.light_current_a,      fit.saturation_current_a, fit.series_resistance_ohm,
                fit.shunt_resistance_ohm, fit.modified_ideality_v,  fit.adjust_pct,
                fit.band_gap_ev,          fit.band_gap_per_k};
    }
    static ListedFit from_row(const std::vector<double>& row) {
        return {.light_current_a = row.at(0),
                .saturation_current_a = row.at(1),
                .series_resistance_ohm = row.at(2),
                .shunt_resistance_ohm = row.at(3),
                .modified_ideality_v = row.at(4),
                .adjust_pct = row.at(5),
                .band_gap_ev = row.at(6),
                .band_gap_per_k = row.at(7)};
    }
};

namespace {

constexpr auto listed_fit_columns = std::to_array<Column>({
    {"light_current_a", unit::ampere, {0.0, 1000.0, true}, "light-generated current"},
    {"saturation_current_a", unit::ampere, {0.0, 1.0, true}, "diode saturation current"},
    {"series_resistance_ohm", unit::ohm, {0.0, 1e4}, "series resistance"},
    {"shunt_resistance_ohm", unit::ohm, {0.0, 1e9, true}, "shunt resistance"},
    {"modified_ideality_v", unit::volt, {0.0, 100.0, true}, "ideality times cells times kT/q"},
    {"adjust_pct", unit::percent, {-200.0, 200.0}, "change of the coefficients in the CEC model"},
    {"band_gap_ev", unit::none, {0.5, 2.5}, "band gap the fit was made with, in eV"},
    {"band_gap_per_k", unit::none, {-0.001, 0.0}, "relative change of the gap per kelvin"},
});

constexpr Range positive_volts{.low = 0.0, .high = 2000.0, .low_open = true};
constexpr Range positive_amperes{.low = 0.0, .high = 100.0, .low_open = true};

constexpr double nearest_to_zero_pct_per_k = -0.17;

Sentence coefficient_remedy() {
    return say<"parts.coefficients">(with<"volts">("-120 mV/K"), with<"amperes">("4 mA/K"));
}

/// Rear light adds current, at most as much as the same irradiance on the front.
void check_amperes_behind(const Panel& panel, const std::string& title) {
    const auto check = [&](const std::optional<double>& given, const char* field, double rear) {
        const double most_a = panel.i_sc * (1.0 + rear / 1000.0);
        if (!given || (*given >= panel.i_sc && *given <= most_a * (1.0 + 1e-9))) return;
        refuse_part(title, field, format_quantity(*given, unit::ampere, UnitSystem::si, 6),
                    "from i_sc = " + format_number(panel.i_sc, 6) + " A to " +
                        format_number(most_a, 6) + " A",
                    say<"parts.read_from_label">(with<"quantity">("Isc")));
    };
    check(panel.i_sc_bnpi, "i_sc_bnpi", nameplate_rear_w_m2);
    check(panel.i_sc_bsi, "i_sc_bsi", stress_rear_w_m2);
}

}  // namespace

std::span<const Field> panel_fields() {
    static const std::vector<Field> fields = with_common_fields<Panel>({
        bind<&Panel::technology>(
            {.name = "technology",
             .kind = FieldKind::choice,
             .meaning = "kind of cell; sets the class defaults and the band gap"}),
        bind<&Panel::v_oc>({.name = "v_oc",
                            .kind = FieldKind::number,
                            .unit = unit::volt,
                            .range = positive_volts,
                            .required = true,
                            .meaning = "open-circuit voltage at STC",
                            .remedy = say<"parts.read_from_label">(with<"quantity">("Voc"))}),
        bind<&Panel::i_sc>({.name = "i_sc",
                            .kind = FieldKind::number,
                            .unit = unit::ampere,
                            .range = positive_amperes,
                            .required = true,
                            .meaning = "short-circuit current at STC",
                            .remedy = say<"parts.read_from_label">(with<"quantity">("Isc"))}),
        bind<&Panel::v_mp>({.name = "v_mp",
                            .kind = FieldKind::number,
                            .unit = unit::volt,
                            .range = positive_volts,
                            .meaning = "voltage at maximum power at STC"}),
        bind<&Panel::i_mp>({.name = "i_mp",
                            .kind = FieldKind::number,
                            .unit = unit::ampere,
                            .range = positive_amperes,
                            .meaning = "current at maximum power at STC"}),
        bind<&Panel::alpha_isc_pct_per_k>({.name = "alpha_isc_pct_per_k",
                                           .kind = FieldKind::number,
                                           .unit = unit::percent_per_kelvin,
                                           .range = {.low = -0.2, .high = 0.6},
                                           .meaning = "change of i_sc with cell temperature",
                                           .relative_to = "i_sc",
                                           .relative_unit = unit::ampere_per_kelvin,
                                           .remedy = coefficient_remedy()}),
        bind<&Panel::beta_voc_pct_per_k>({.name = "beta_voc_pct_per_k",
                                          .kind = FieldKind::number,
                                          .unit = unit::percent_per_kelvin,
                                          .range = {.low = -0.9, .high = -0.14},
                                          .meaning = "change of v_oc with cell temperature",
                                          .relative_to = "v_oc",
                                          .relative_unit = unit::volt_per_kelvin,
                                          .remedy = coefficient_remedy()}),
        bind<&Panel::gamma_pmp_pct_per_k>(
            {.name = "gamma_pmp_pct_per_k",
             .kind = FieldKind::number,
             .unit = unit::percent_per_kelvin,
             .range = {.low = -0.9, .high = -0.05},
             .meaning = "change of maximum power with cell temperature",
             .relative_to = "v_mp*i_mp",
             .relative_unit = unit::watt_per_kelvin,
             .remedy = coefficient_remedy()}),
        bind<&Panel::noct_c>(
            {.name = "noct_c",
             .kind = FieldKind::number,
             .unit = unit::celsius,
             .range = {.low = 30.0, .high = 80.0},
             .meaning = "cell temperature at 800 W/m2, 20 °C air and 1 m/s wind (NOCT)"}),
        bind<&Panel::cells_in_series>(
            {.name = "cells_in_series",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 1, .high = 1000},
             .meaning = "cells in series; for half-cut cells, half of the visible ones"}),
        bind<&Panel::bypass_diodes>({.name = "bypass_diodes",
                                     .kind = FieldKind::count,
                                     .unit = unit::count,
                                     .range = {.low = 0, .high = 400},
                                     .meaning = "number of bypass diodes"}),
        bind<&Panel::max_system_voltage_v>({.name = "max_system_voltage_v",
                                            .kind = FieldKind::number,
                                            .unit = unit::volt,
                                            .range = {.low = 10.0, .high = 3000.0},
                                            .meaning = "maximum system voltage"}),
        bind<&Panel::max_series_fuse_a>({.name = "max_series_fuse_a",
                                         .kind = FieldKind::number,
                                         .unit = unit::ampere,
                                         .range = {.low = 0.5, .high = 100.0},
                                         .meaning = "maximum series fuse rating"}),
        bind<&Panel::power_tolerance_pct>({.name = "power_tolerance_pct",
                                           .kind = FieldKind::number,
                                           .unit = unit::percent,
                                           .range = {.low = 0.0, .high = 25.0},
                                           .meaning = "tolerance of rated power, plus or minus"}),
        bind<&Panel::bifaciality>({.name = "bifaciality",
                                   .kind = FieldKind::number,
                                   .unit = unit::none,
                                   .range = {.low = 0.0, .high = 1.0},
                                   .meaning = "rear power as a share of front power; 0 for an "
                                              "opaque back",
                                   .careful = careful_bifaciality,
                                   .careful_source = "solarapp-bifacial"}),
        bind<&Panel::i_sc_bnpi>(
            {.name = "i_sc_bnpi",
             .kind = FieldKind::number,
             .unit = unit::ampere,
             .range = positive_amperes,
             .meaning = "short-circuit current on the label with 135 W/m2 on the back too (BNPI)"}),
        bind<&Panel::i_sc_bsi>(
            {.name = "i_sc_bsi",
             .kind = FieldKind::number,
             .unit = unit::ampere,
             .range = positive_amperes,
             .meaning = "short-circuit current on the label with 300 W/m2 on the back too (BSI)"}),
        bind<&Panel::area_m2>({.name = "area_m2",
                               .kind = FieldKind::number,
                               .unit = unit::square_metre,
                               .range = {.low = 0.0, .high = 10.0, .low_open = true},
                               .meaning = "area of the panel"}),
        bind<&Panel::listed_fit>({.name = "listed_fit",
                                  .kind = FieldKind::record,
                                  .meaning = "single-diode parameters published with the rating",
                                  .columns = listed_fit_columns}),
    });
    return fields;
}

void check_panel(const Panel& panel) {
    const std::string title = "panel \"" + panel.id + '"';
    const auto volts = [](double v) { return format_quantity(v, unit::volt, UnitSystem::si, 6); };
    const auto amperes = [](double i) {
        return format_quantity(i, unit::ampere, UnitSystem::si, 6);
    };
    // Listed gallium arsenide modules reach -0.153 %/K, all others end at -0.171. Closer to zero is
    // a label in V/K, which would make the cold voltage too low.
    const bool is_gaas = panel.technology == Technology::gaas;
    if (panel.beta_voc_pct_per_k && *panel.beta_voc_pct_per_k > nearest_to_zero_pct_per_k &&
        !is_gaas) {
        const auto in_field = [](double beta) {
            return exact_text(beta, unit::percent_per_kelvin);
        };
        refuse_part(title, "beta_voc_pct_per_k", in_field(*panel.beta_voc_pct_per_k),
                    "<= " + in_field(nearest_to_zero_pct_per_k) + " unless technology is GaAs",
                    coefficient_remedy());
    }
    if (panel.v_mp && *panel.v_mp >= panel.v_oc) {
        refuse_part(title, "v_mp", volts(*panel.v_mp), "below v_oc = " + volts(panel.v_oc),
                    base_sentences::say<"base.exchanged">());
    }
    if (panel.i_mp && *panel.i_mp >= panel.i_sc) {
        refuse_part(title, "i_mp", amperes(*panel.i_mp), "below i_sc = " + amperes(panel.i_sc),
                    base_sentences::say<"base.exchanged">());
    }
    check_amperes_behind(panel, title);
    if (panel.v_mp && *panel.v_mp <= 0.5 * panel.v_oc) {
        refuse_part(title, "v_mp", volts(*panel.v_mp), "above half of v_oc = " + volts(panel.v_oc),
                    say<"parts.no_such_diode">(with<"what">(say<"parts.label">())));
    }
    if (panel.v_mp && panel.i_mp) {
        const double sum = *panel.v_mp / panel.v_oc + *panel.i_mp / panel.i_sc;
        if (sum <= 1.0) {
            refuse_part(title, "v_mp/v_oc + i_mp/i_sc", format_number(sum, 4), "above 1",
                        say<"parts.no_such_diode">(with<"what">(say<"parts.v_mp_and_i_mp">())));
        }
    }
}

}  // namespace heatmatch
