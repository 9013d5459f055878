#include "heatmatch/match/circuit/unlike_array.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

StringPanel panel_of_string(const PanelInService& panel, PanelState state) {
    // With one diode across a weak panel the most power passes it: careful where not stated.
    const bool careful = state == PanelState::brightest && !panel.panel.bypass_diodes;
    const int diodes = careful ? 1 : bypass_diodes_of(panel.panel);
    return {.diode = panel_as(panel, state),
            .substrings = std::max(1, diodes),
            .bypass = diodes > 0,
            .noct_c = panel.panel.noct_c.value_or(usual_noct_c)};
}

}  // namespace

SingleDiode panel_as(const PanelInService& panel, PanelState state) {
    switch (state) {
        case PanelState::weak:
            return panel.today.scaled(panel.current_factor_low / panel.current_factor, 1.0);
        case PanelState::strong:
            return panel.today.scaled(panel.current_factor_high / panel.current_factor, 1.0);
        case PanelState::brightest:
            return panel.as_new.scaled(panel.bright_isc_a() / panel.panel.i_sc,
                                       panel.cold.v_oc_at_25_c / panel.panel.v_oc);
        case PanelState::today:
            break;
    }
    return panel.today;
}

std::size_t UnlikeArray::add(const OwnedPanels& owned, const PanelInService& panel) {
    auto known = std::find_if(groups.begin(), groups.end(), [&owned](const GroupInArray& group) {
        return group.owned.group == owned.group;
    });
    if (known == groups.end()) {
        groups.push_back({.owned = owned, .panel = panel});
        known = std::prev(groups.end());
    }
    ++known->count;
    return static_cast<std::size_t>(known - groups.begin());
}

int UnlikeArray::panel_count() const {
    std::size_t count = 0;
    for (const auto& string : strings) count += string.size();
    return static_cast<int>(count);
}

int UnlikeArray::count_in(std::size_t string, std::size_t group) const {
    return static_cast<int>(std::count(strings[string].begin(), strings[string].end(), group));
}

double UnlikeArray::cold_voltage_v(std::size_t string) const {
    double volts = 0.0;
    for (const std::size_t group : strings[string]) volts += panel(group).cold.v_oc;
    return volts;
}

double UnlikeArray::label_vmp_v(std::size_t string) const {
    double volts = 0.0;
    for (const std::size_t group : strings[string]) volts += panel(group).panel.v_mp.value_or(0.0);
    return volts;
}

double UnlikeArray::short_circuit_current_a(std::size_t string) const {
    double most = 0.0;
    for (const std::size_t group : strings[string]) {
        most = std::max(most, panel(group).bright_isc_a());
    }
    return most;
}

double UnlikeArray::least_current_a(std::size_t string) const {
    double least = std::numeric_limits<double>::infinity();
    for (const std::size_t group : strings[string]) {
        least = std::min(least, panel(group).i_sc_limit_a);
    }
    return least;
}

bool UnlikeArray::is_blocked(std::size_t string) const {
    return std::all_of(strings[string].begin(), strings[string].end(),
                       [this](std::size_t group) { return panel(group).blocking; });
}

MixedArray UnlikeArray::array(PanelState state) const {
    std::vector<PanelString> made;
    for (std::size_t s = 0; s < strings.size(); ++s) {
        PanelString string;
        if (is_blocked(s)) string.blocking_v = diode_drop_v;
        for (const std::size_t group : strings[s]) {
            string.panels.push_back(panel_of_string(panel(group), state));
        }
        made.push_back(std::move(string));
    }
    return MixedArray::of(std::move(made));
}

MixedArrayCurve UnlikeArray::curve(PanelState state, double irradiance_w_m2,
                                   double cell_temperature_c) const {
    const std::vector<PanelConditions> conditions(
        static_cast<std::size_t>(panel_count()),
        {.irradiance_w_m2 = irradiance_w_m2, .cell_temperature_c = cell_temperature_c});
    return array(state).at(conditions);
}

UnlikeArray unlike_array(const Layout& layout, const Installation& installation, const Parts& parts,
                         std::string_view part) {
    UnlikeArray array{.layout = layout};
    for (const auto& names : plain_strings(layout, part, "array")) {
        std::vector<std::size_t>& string = array.strings.emplace_back();
        for (const std::string& name : names) {
            const OwnedPanels& owned = find_group(installation, name);
            string.push_back(
                array.add(owned, panel_in_service(owned, find_panel(parts, owned.panel),
                                                  installation.site.record_low_c)));
        }
    }
    for (const GroupInArray& group : array.groups) {
        if (group.count <= group.owned.count) continue;
        throw InvalidInput(ErrorDetail{
            .part = std::string(part),
            .field = "array",
            .value = say<"circuit.panels_used">(
                         with<"layout">(layout.text()),
                         with<"count">(static_cast<double>(group.count), unit::none, 9),
                         with<"group">(group.owned.group))
                         .text(),
            .allowed = say<"circuit.panels_owned">(
                           with<"count">(static_cast<double>(group.owned.count), unit::none, 9),
                           with<"group">(group.owned.group))
                           .text(),
            .remedy = say<"circuit.use_fewer">()});
    }
    return array;
}

}  // namespace heatmatch
