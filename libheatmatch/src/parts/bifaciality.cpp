#include "heatmatch/parts/bifaciality.hpp"

#include "sentences.hpp"

#include <algorithm>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

using parts_sentences::say;

namespace {

constexpr double full_sun_w_m2 = 1000.0;
constexpr double first_bifacial_years = 12.0;  // almost none were sold earlier; from memory

/// Rear current over front current at equal irradiance.
double share_behind(double with_rear_a, double front_a, double rear_w_m2) {
    return (with_rear_a / front_a - 1.0) * full_sun_w_m2 / rear_w_m2;
}

}  // namespace

std::optional<double> labelled_bifaciality(const Panel& panel) {
    if (panel.i_sc_bnpi) return share_behind(*panel.i_sc_bnpi, panel.i_sc, nameplate_rear_w_m2);
    if (panel.i_sc_bsi) return share_behind(*panel.i_sc_bsi, panel.i_sc, stress_rear_w_m2);
    return std::nullopt;
}

bool has_opaque_back(const Panel& panel, std::optional<double> age_years) {
    const auto kind = panel.technology;
    const bool may_be_clear =
        !kind || kind == Technology::mono_si || kind == Technology::heterojunction;
    if (!may_be_clear) return true;
    return kind != Technology::heterojunction && age_years && *age_years >= first_bifacial_years;
}

double rear_current_factor(const Panel& panel, bool blocked) {
    double share = 0.0;
    if (panel.i_sc_bsi) {
        share = *panel.i_sc_bsi / panel.i_sc - 1.0;
    } else {
        const double stated = labelled_bifaciality(panel).value_or(panel.bifaciality.value_or(0.0));
        share = stated * stress_rear_w_m2 / full_sun_w_m2;
    }
    return 1.0 + (blocked ? std::min(share, most_behind_blocked) : share);
}

void fill_bifaciality(Panel& panel, std::optional<double> age_years,
                      std::vector<Assumption>& assumed) {
    if (panel.bifaciality) return;
    const auto list = [&](double value, Sentence source) {
        assumed.push_back({.part = "panel \"" + panel.id + '"',
                           .field = "bifaciality",
                           .value = sentence_of(Amount{value, unit::none}),
                           .source = std::move(source)});
    };
    if (const auto labelled = labelled_bifaciality(panel)) {
        panel.bifaciality = std::min(*labelled, 1.0);
        list(*panel.bifaciality, say<"parts.amperes_behind">());
        return;
    }
    if (has_opaque_back(panel, age_years)) panel.bifaciality = 0.0;
    list(0.0, panel.bifaciality ? say<"parts.opaque_back">() : say<"parts.front_only">());
}

}  // namespace heatmatch
