#include "heatmatch/match/margins/unlike_array_margins.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <limits>
#include <optional>
#include <string>
#include <utility>

namespace heatmatch {

using margins_sentences::say;

namespace {

constexpr double summer_cells_c = 45.0;
/// Of a clear sky on a plane without direct sun; from memory.
constexpr double diffuse_w_m2 = 100.0;

/// Sun on each group.
using GroupSuns = std::vector<double>;

bool same_plane(const OwnedPanels& a, const OwnedPanels& b) {
    return a.tilt_deg == b.tilt_deg && a.azimuth_deg == b.azimuth_deg;
}

/// All groups in bright sun; where their planes differ, also each plane alone; and each group that
/// has shade in it, the others in the sun.
std::vector<GroupSuns> suns_of(const UnlikeArray& array, double bright_w_m2) {
    std::vector<GroupSuns> cases{GroupSuns(array.groups.size(), bright_w_m2)};
    for (std::size_t g = 0; g < array.groups.size(); ++g) {
        GroupSuns suns;
        bool first_of_plane = true;
        for (std::size_t other = 0; other < array.groups.size(); ++other) {
            const bool same = same_plane(array.groups[g].owned, array.groups[other].owned);
            suns.push_back(same ? bright_w_m2 : diffuse_w_m2);
            if (same && other < g) first_of_plane = false;
        }
        if (first_of_plane && suns != cases.front()) cases.push_back(std::move(suns));
    }
    // Each group in its deepest shade, whatever part of its panels that falls on.
    for (std::size_t g = 0; g < array.groups.size(); ++g) {
        const std::vector<double>& shade = array.groups[g].owned.shade_pct;
        if (shade.empty()) continue;
        GroupSuns suns = cases.front();
        suns[g] *= 1.0 - *std::max_element(shade.begin(), shade.end()) / 100.0;
        cases.push_back(std::move(suns));
    }
    return cases;
}

MixedArrayCurve curve_under(const UnlikeArray& array, const MixedArray& panels,
                            const GroupSuns& suns) {
    std::vector<PanelConditions> conditions;
    for (const auto& string : array.strings) {
        for (const std::size_t group : string) {
            conditions.push_back(
                {.irradiance_w_m2 = suns[group], .cell_temperature_c = summer_cells_c});
        }
    }
    return panels.at(conditions);
}

/// Panels that do not state their bypass diodes count as having that many.
MixedArray with_unstated_diodes(const UnlikeArray& array, int diodes) {
    MixedArray panels = array.array(PanelState::today);
    for (std::size_t s = 0; s < array.strings.size(); ++s) {
        for (std::size_t p = 0; p < array.strings[s].size(); ++p) {
            if (array.panel(array.strings[s][p]).panel.bypass_diodes) continue;
            panels.strings[s].panels[p].substrings = std::max(1, diodes);
            panels.strings[s].panels[p].bypass = diodes > 0;
        }
    }
    return panels;
}

std::string subject_of_array(const UnlikeArray& array) {
    return "array \"" + array.layout.text() + '"';
}

std::string subject_of_group(const UnlikeArray& array, std::size_t group) {
    return "group \"" + array.groups[group].owned.group + '"';
}

/// Vmp of a string alone in full sun [V].
double string_vmp_v(const UnlikeArray& array, std::size_t string) {
    UnlikeArray alone = array;
    alone.strings = {array.strings[string]};
    return alone.curve(PanelState::today, stc_irradiance_w_m2, stc_temperature_c)
        .maximum_power()
        .voltage_v;
}

Margin unequal_strings_margin(const UnlikeArray& array) {
    constexpr double most_pct = 5.0;
    Margin margin{.name = "unequal strings",
                  .subject = subject_of_array(array),
                  .consequence = Severity::caution,
                  .limit = most_pct,
                  .unit = unit::percent,
                  .source = "common-practice"};
    if (array.strings.size() == 1) {
        margin.said = say<"array.one_string">();
        margin.severity = Severity::none;
        margin.headroom = 1.0;
        return margin;
    }
    double low_v = string_vmp_v(array, 0);
    double high_v = low_v;
    for (std::size_t s = 1; s < array.strings.size(); ++s) {
        const double volts = string_vmp_v(array, s);
        low_v = std::min(low_v, volts);
        high_v = std::max(high_v, volts);
    }
    const MixedArrayCurve curve =
        array.curve(PanelState::brightest, stc_irradiance_w_m2, stc_temperature_c);
    double back_a = 0.0;
    for (const StringPoint& string : curve.at_voltage(curve.open_circuit_voltage_v()).strings) {
        back_a = std::max(back_a, -string.current_a);
    }
    margin.value = high_v > 0.0 ? 100.0 * (high_v - low_v) / high_v : 0.0;
    margin.said = say<"array.unequal_strings">(with<"low_v">(low_v, unit::volt),
                                               with<"high_v">(high_v, unit::volt),
                                               with<"back">(back_a, unit::ampere));
    grade(margin);
    return margin;
}

/// The group of the lowest current in a string with panels of more.
std::size_t weakest_group(const UnlikeArray& array) {
    std::size_t weakest = array.strings.front().front();
    double least_share = 2.0;
    for (const auto& string : array.strings) {
        double most_a = 0.0;
        const auto current_of = [&array](std::size_t group) {
            return array.panel(group).today.light_current_a;
        };
        for (const std::size_t group : string) most_a = std::max(most_a, current_of(group));
        for (const std::size_t group : string) {
            const double share = most_a > 0.0 ? current_of(group) / most_a : 1.0;
            if (share >= least_share) continue;
            least_share = share;
            weakest = group;
        }
    }
    return weakest;
}

Margin series_mismatch_margin(const UnlikeArray& array) {
    constexpr double most_pct = 5.0;
    const MixedArrayCurve curve =
        array.curve(PanelState::today, stc_irradiance_w_m2, summer_cells_c);
    const double sum_w = curve.sum_of_maxima_w();
    const double best_w = curve.maximum_power().power_w;
    Margin margin{.name = "unequal panels",
                  .subject = subject_of_array(array),
                  .consequence = Severity::caution,
                  .value = sum_w > 0.0 ? 100.0 * std::max(0.0, 1.0 - best_w / sum_w) : 0.0,
                  .limit = most_pct,
                  .unit = unit::percent,
                  .said = say<"array.unequal_panels">(
                      with<"best">(best_w, unit::watt), with<"sum">(sum_w, unit::watt),
                      with<"lost">(std::max(0.0, sum_w - best_w), unit::watt),
                      with<"group">(array.groups[weakest_group(array)].owned.group)),
                  .source = "common-practice"};
    grade(margin);
    return margin;
}

/// Load on the panels of a group at the worst of several operating points.
struct GroupLoad {
    double diode_a = 0.0;     //!< through one bypass diode
    double absorbed_w = 0.0;  //!< by a panel, without the heat of its diodes
};

/// An open limit, switch or element leaves the strings to each other.
constexpr double open_ohm = std::numeric_limits<double>::infinity();

std::vector<GroupLoad> loads_of(const UnlikeArray& array, const MixedArray& panels,
                                double bright_w_m2, std::initializer_list<double> into_ohm) {
    std::vector<GroupLoad> loads(array.groups.size());
    for (const GroupSuns& suns : suns_of(array, bright_w_m2)) {
        const MixedArrayCurve curve = curve_under(array, panels, suns);
        for (const double ohm : into_ohm) {
            const OperatingPoint point = curve.into_resistance(ohm);
            const ArrayPoint at = curve.at_voltage(point.voltage_v);
            for (std::size_t s = 0; s < array.strings.size(); ++s) {
                for (std::size_t p = 0; p < array.strings[s].size(); ++p) {
                    const PanelPoint& panel = at.strings[s].panels[p];
                    GroupLoad& load = loads[array.strings[s][p]];
                    if (const int count = panel.substrings_bypassed(); count > 0) {
                        load.diode_a =
                            std::max(load.diode_a, panel.bypass_w / diode_drop_v / count);
                    } else {
                        load.absorbed_w = std::max(load.absorbed_w, -panel.power_w);
                    }
                }
            }
        }
    }
    return loads;
}

/// A bypass diode is made for the short-circuit current of its own panel.
Margin bypass_margin(const UnlikeArray& array, std::size_t group, const GroupLoad& load,
                     double careful_a) {
    const PanelInService& panel = array.panel(group);
    Margin margin{.name = "bypass diodes",
                  .subject = subject_of_group(array, group),
                  .consequence = Severity::warning,
                  .value = load.diode_a,
                  .limit = panel.panel.i_sc,
                  .unit = unit::ampere,
                  .said = say<"array.bypass_idle">(),
                  .source = "common-practice"};
    if (load.diode_a > 0.0) margin.said = say<"array.bypass_conducts">();
    grade(margin);
    if (load.diode_a > 0.0 && margin.severity == Severity::none) {
        margin.severity = Severity::caution;
    }
    if (!panel.panel.bypass_diodes) {
        // With another number of diodes they may conduct, which is a caution at least.
        const double unstated = headroom_of(careful_a, *margin.limit);
        margin.careful_headroom = careful_a > 0.0 ? std::min(unstated, 0.5 * near_limit) : 1.0;
        margin.assumed.push_back(
            {.part = "panel \"" + panel.panel.id + '"',
             .field = "bypass_diodes",
             .value = sentence_of(
                 Amount{static_cast<double>(bypass_diodes_of(panel.panel)), unit::none}),
             .source = sentence_of(Name{"common-practice"})});
    }
    return margin;
}

/// Beyond a tenth of its power a panel that others reverse may get hot spots [W].
double most_absorbed_w(const Panel& panel) {
    constexpr double most_share = 0.1;
    return most_share * panel.v_mp.value_or(0.0) * panel.i_mp.value_or(0.0);
}

Margin reversed_margin(const UnlikeArray& array, std::size_t group, const GroupLoad& load,
                       const GroupLoad& careful) {
    const Panel& panel = array.panel(group).panel;
    Margin margin{.name = "reversed panel",
                  .subject = subject_of_group(array, group),
                  .value = load.absorbed_w,
                  .limit = most_absorbed_w(panel),
                  .unit = unit::watt,
                  .said = load.absorbed_w > 0.0 ? say<"array.panel_reversed">()
                                                : say<"array.panel_not_reversed">(),
                  .source = "common-practice"};
    grade(margin);
    if (!panel.bypass_diodes && careful.absorbed_w > load.absorbed_w) {
        margin.careful_headroom = headroom_of(careful.absorbed_w, *margin.limit);
        margin.missing.emplace_back("bypass_diodes");
    }
    return margin;
}

}  // namespace

std::vector<Margin> unlike_array_margins(const Circuit& circuit, const Site& site) {
    const UnlikeArray& array = *circuit.unlike;
    std::vector<Margin> margins{unequal_strings_margin(array), series_mismatch_margin(array)};
    const double wire_ohm = circuit.wire_ohm_at(room_c);
    const auto loads_on = [&](const MixedArray& panels) {
        return loads_of(
            array, panels, site.bright_irradiance_w_m2,
            {circuit.bank.low_ohm() + wire_ohm, circuit.bank.high_ohm() + wire_ohm, open_ohm});
    };
    const auto loads = loads_on(array.array(PanelState::today));
    const auto loads_with = [&](int diodes) {
        return loads_on(with_unstated_diodes(array, diodes));
    };
    const auto none = loads_with(0);
    const auto one = loads_with(1);
    const auto three = loads_with(3);
    for (std::size_t g = 0; g < array.groups.size(); ++g) {
        margins.push_back(
            bypass_margin(array, g, loads[g], std::max(one[g].diode_a, three[g].diode_a)));
        margins.push_back(reversed_margin(array, g, loads[g], none[g]));
    }
    return margins;
}

bool reversed_too_far(const UnlikeArray& array, const Site& site, double load_ohm) {
    if (array.strings.size() == 1 && std::isinf(load_ohm)) return false;
    const auto loads =
        loads_of(array, array.array(PanelState::today), site.bright_irradiance_w_m2, {load_ohm});
    for (std::size_t g = 0; g < loads.size(); ++g) {
        const double limit_w = most_absorbed_w(array.panel(g).panel);
        if (headroom_of(loads[g].absorbed_w, limit_w) < 0.0) return true;
    }
    return false;
}

}  // namespace heatmatch
