#include "heatmatch/solar/datasheet_fit.hpp"

#include "diode_equations.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double largest_rho_per_k = 0.012;

std::optional<FitRefusal> refusal(const LabelValues& label) {
    const auto not_below = [](const char* field, const char* other, double value, double limit,
                              const Unit& in) {
        return FitRefusal{
            field, say<"solar.not_below">(with<"value">(value, in, 5), with<"field">(Name{other}),
                                          with<"limit">(limit, in, 5))};
    };
    const auto not_above = [](const char* ratio, double value, double limit) {
        return FitRefusal{"v_mp", say<"solar.not_above">(with<"ratio">(Name{ratio}),
                                                         with<"value">(value, unit::none, 5),
                                                         with<"limit">(limit))};
    };
    const auto positive = [](double value, const char* field) -> std::optional<FitRefusal> {
        if (std::isfinite(value) && value > 0.0) return std::nullopt;
        return FitRefusal{field, say<"solar.not_positive">(with<"value">(value, unit::none, 5))};
    };
    for (const auto& found : {positive(label.v_oc, "v_oc"), positive(label.i_sc, "i_sc"),
                              positive(label.v_mp, "v_mp"), positive(label.i_mp, "i_mp")}) {
        if (found) return found;
    }
    if (label.i_mp >= label.i_sc) {
        return not_below("i_mp", "i_sc", label.i_mp, label.i_sc, unit::ampere);
    }
    if (label.v_mp >= label.v_oc) {
        return not_below("v_mp", "v_oc", label.v_mp, label.v_oc, unit::volt);
    }
    const double v = label.v_mp / label.v_oc;
    const double i = label.i_mp / label.i_sc;
    if (v <= 0.5) return not_above("v_mp/v_oc", v, 0.5);
    if (v + i <= 1.0) return not_above("v_mp/v_oc + i_mp/i_sc", v + i, 1.0);
    const bool usable = std::isfinite(label.alpha_per_k) && std::isfinite(label.beta_per_k) &&
                        std::isfinite(label.gamma_per_k) && label.beta_per_k < 0.0;
    if (!usable) {
        return FitRefusal{"beta_voc_pct_per_k",
                          say<"solar.not_negative">(with<"value">(100.0 * label.beta_per_k,
                                                                  unit::percent_per_kelvin, 5))};
    }
    return std::nullopt;
}

/// Range of 0.1 to 99.9 % of the listed modules (solar coefficients in %/K).
Sentences unusual_values(const LabelValues& label, bool use_gamma) {
    Sentences warnings;
    const auto check = [&warnings](double value, double low, double high, const char* name) {
        if (value >= low && value <= high) return;
        constexpr double share_pct = 99.8;
        warnings.push_back(say<"solar.unusual">(
            with<"name">(Name{name}), with<"value">(value, unit::none, 4),
            with<"share">(share_pct, unit::percent), with<"low">(low), with<"high">(high)));
    };
    const double v = label.v_mp / label.v_oc;
    const double i = label.i_mp / label.i_sc;
    check(100.0 * label.alpha_per_k, -0.05, 0.19, "alpha_isc_pct_per_k");
    check(100.0 * label.beta_per_k, -0.59, -0.18, "beta_voc_pct_per_k");
    if (use_gamma) check(100.0 * label.gamma_per_k, -0.66, -0.16, "gamma_pmp_pct_per_k");
    check(v, 0.70, 0.865, "v_mp/v_oc");
    check(i, 0.777, 0.984, "i_mp/i_sc");
    check(v * i, 0.58, 0.81, "fill factor");
    return warnings;
}

}  // namespace

std::variant<DatasheetFit, FitRefusal> fit_label(const LabelValues& label, bool use_gamma) {
    if (auto refused = refusal(label)) return *refused;
    ScaledLabel scaled{.v = label.v_mp / label.v_oc,
                       .i = label.i_mp / label.i_sc,
                       .alpha = label.alpha_per_k,
                       .beta = label.beta_per_k,
                       .kappa = kappa_of(label.band_gap_ev)};
    const double label_v = scaled.v;
    DatasheetFit fit;
    std::optional<ScaledDiode> solution = exact_solution(scaled);
    if (!solution) solution = split_solution(scaled, fit.fit_mode);
    const ScaledDiode& p = *solution;

    fit.light_current_a = label.i_sc * (p.j * (1.0 - std::exp(-1.0 / p.a)) + p.g);
    fit.ln_saturation_current = std::log(p.j * label.i_sc) - 1.0 / p.a;
    fit.series_resistance_ohm = p.r * label.v_oc / label.i_sc;
    fit.shunt_conductance_s = p.g * label.i_sc / label.v_oc;
    fit.modified_ideality_v = p.a * label.v_oc;
    fit.alpha_isc_a_per_k = label.alpha_per_k * label.i_sc;
    fit.band_gap_ev = label.band_gap_ev;
    if (fit.fit_mode == FitMode::gap) {
        fit.band_gap_ev = band_gap_of(scaled.kappa);
    }
    fit.vmp_shift = scaled.v / label_v - 1.0;
    const double gamma = model_gamma(scaled, p);
    fit.gamma_error_per_k = gamma - label.gamma_per_k;
    if (use_gamma && p.r >= 1e-6) {
        const double wanted = fit.gamma_error_per_k * scaled.v / (scaled.i * p.r);
        fit.series_resistance_per_k = std::clamp(wanted, -largest_rho_per_k, largest_rho_per_k);
        fit.series_resistance_clamped = fit.series_resistance_per_k != wanted;
        fit.gamma_error_per_k -= fit.series_resistance_per_k * scaled.i * p.r / scaled.v;
    }
    fit.warnings = unusual_values(label, use_gamma);
    return fit;
}

DatasheetFit fit_single_diode(const Panel& panel, bool use_gamma) {
    const FilledPanel filled = fill_class_defaults(panel);
    const Panel& full = filled.panel;
    auto result = fit_label({.v_oc = full.v_oc,
                             .i_sc = full.i_sc,
                             .v_mp = *full.v_mp,
                             .i_mp = *full.i_mp,
                             .alpha_per_k = *full.alpha_isc_pct_per_k / 100.0,
                             .beta_per_k = *full.beta_voc_pct_per_k / 100.0,
                             .gamma_per_k = *full.gamma_pmp_pct_per_k / 100.0,
                             .band_gap_ev = filled.band_gap_ev},
                            use_gamma);
    if (const auto* refused = std::get_if<FitRefusal>(&result)) {
        const std::string part = "panel \"" + panel.id + '"';
        const Sentence told = say<"solar.label_refused">(
            with<"part">(part), with<"field">(refused->field), with<"reason">(refused->reason));
        throw InvalidInput(
            told.text(),
            ErrorDetail{.part = part, .field = refused->field, .allowed = refused->reason.text()});
    }
    DatasheetFit fit = std::get<DatasheetFit>(std::move(result));
    fit.assumed = filled.assumed;
    std::erase_if(fit.assumed, [](const Assumption& a) { return a.field == "noct_c"; });
    return fit;
}

SingleDiode listed_single_diode(const Panel& panel) {
    if (!panel.listed_fit) {
        throw InvalidInput(ErrorDetail{.part = "panel \"" + panel.id + '"',
                                       .field = "listed_fit",
                                       .value = "(missing)",
                                       .allowed = "given",
                                       .remedy = say<"solar.fit_label">()});
    }
    const ListedFit& listed = *panel.listed_fit;
    const double alpha =
        panel.alpha_isc_pct_per_k.value_or(panel_class(panel.technology).alpha_isc_pct_per_k);
    return {.light_current_a = listed.light_current_a,
            .ln_saturation_current = std::log(listed.saturation_current_a),
            .series_resistance_ohm = listed.series_resistance_ohm,
            .shunt_conductance_s = 1.0 / listed.shunt_resistance_ohm,
            .modified_ideality_v = listed.modified_ideality_v,
            .alpha_isc_a_per_k = alpha / 100.0 * panel.i_sc * (1.0 - listed.adjust_pct / 100.0),
            .band_gap_ev = listed.band_gap_ev,
            .band_gap_per_k = listed.band_gap_per_k};
}

}  // namespace heatmatch
