#include "heatmatch/parts/class_defaults.hpp"

#include "sentences.hpp"

#include <array>

namespace heatmatch {

using parts_sentences::say;

namespace {

struct ClassRow {
    Technology technology;
    PanelClass values;
};

// Medians by technology of the CEC module list (solar coefficients and NOCT, 2017 edition; ratios,
// 2019 edition) and the band gaps of De Soto 2006 and later work.
constexpr auto classes = std::to_array<ClassRow>({
    {Technology::mono_si, {0.812, 0.939, 0.050, -0.340, -0.457, 46.3, 1.121}},
    {Technology::multi_si, {0.808, 0.938, 0.058, -0.339, -0.452, 46.3, 1.121}},
    {Technology::heterojunction, {0.824, 0.940, 0.036, -0.240, -0.300, 46.0, 1.121}},
    {Technology::cdte, {0.790, 0.913, 0.043, -0.263, -0.264, 46.0, 1.475}},
    {Technology::cigs, {0.758, 0.901, 0.007, -0.330, -0.350, 47.0, 1.15}},
    {Technology::cis, {0.709, 0.886, 0.010, -0.330, -0.340, 47.0, 1.010}},
    {Technology::a_si, {0.767, 0.849, 0.088, -0.349, -0.259, 46.0, 1.7}},
    {Technology::gaas, {0.860, 0.960, 0.084, -0.187, -0.095, 46.0, 1.424}},
});

}  // namespace

Sentence Assumption::said() const {
    return say<"parts.assumption">(with<"part">(part), with<"field">(field), with<"value">(value),
                                   with<"source">(source));
}

PanelClass panel_class(std::optional<Technology> technology) {
    for (const ClassRow& row : classes) {
        if (row.technology == technology) return row.values;
    }
    return {};
}

FilledPanel fill_class_defaults(const Panel& panel) {
    FilledPanel filled{.panel = panel};
    const PanelClass defaults = panel_class(panel.technology);
    filled.band_gap_ev = defaults.band_gap_ev;
    const std::string title = "panel \"" + panel.id + '"';
    const auto fill = [&](std::optional<double>& field, double value, std::string_view name) {
        if (field) return;
        field = value;
        const Field* described = find_field(panel_fields(), name);
        filled.assumed.push_back(
            {.part = title,
             .field = std::string(name),
             .value = sentence_of(Amount{value, described->unit, 8}),
             .source = say<"parts.class_default_of">(with<"source">("cec-module-list"))});
    };
    filled.beta_is_default = !panel.beta_voc_pct_per_k;
    fill(filled.panel.v_mp, round_significant(defaults.v_mp_over_v_oc * panel.v_oc, 4), "v_mp");
    fill(filled.panel.i_mp, round_significant(defaults.i_mp_over_i_sc * panel.i_sc, 4), "i_mp");
    fill(filled.panel.alpha_isc_pct_per_k, defaults.alpha_isc_pct_per_k, "alpha_isc_pct_per_k");
    fill(filled.panel.beta_voc_pct_per_k, defaults.beta_voc_pct_per_k, "beta_voc_pct_per_k");
    fill(filled.panel.gamma_pmp_pct_per_k, defaults.gamma_pmp_pct_per_k, "gamma_pmp_pct_per_k");
    fill(filled.panel.noct_c, defaults.noct_c, "noct_c");
    if (!panel.technology) {
        filled.assumed.push_back({.part = title,
                                  .field = "technology",
                                  .value = say<"parts.silicon">(),
                                  .source = say<"parts.class_default">()});
    }
    return filled;
}

}  // namespace heatmatch
