#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/panel.hpp"

namespace heatmatch {

/// A field set from the class default, not from the part.
struct Assumption {
    std::string part{};   //!< `panel "barn-pair"`
    std::string field{};  //!< `beta_voc_pct_per_k`
    Sentence value{};     //!< `-0.339 %/K`
    Sentence source{};    //!< cite key, `class default` or `from memory`

    friend bool operator==(const Assumption&, const Assumption&) = default;
    /// `panel "barn-pair": beta_voc_pct_per_k = -0.339 %/K (cec-module-list)`
    [[nodiscard]] Sentence said() const;
};

/// Median values of a cell technology in the public module list of the CEC (editions of 2017 and
/// 2019, in %/K and as ratios) and its band gap at 25 °C. @cite cec-module-list @cite de-soto-2006
struct PanelClass {
    double v_mp_over_v_oc = 0.81;
    double i_mp_over_i_sc = 0.94;
    double alpha_isc_pct_per_k = 0.05;
    double beta_voc_pct_per_k = -0.339;
    double gamma_pmp_pct_per_k = -0.452;
    double noct_c = 46.4;
    double band_gap_ev = 1.121;
};

/// Medians of that technology; those of silicon for an unknown one.
[[nodiscard]] PanelClass panel_class(std::optional<Technology> technology);

/// A panel with all values that the electrical model needs, and the assumed ones.
struct FilledPanel {
    Panel panel{};
    double band_gap_ev = 1.121;
    bool beta_is_default = false;
    std::vector<Assumption> assumed{};
};
[[nodiscard]] FilledPanel fill_class_defaults(const Panel& panel);

}  // namespace heatmatch
