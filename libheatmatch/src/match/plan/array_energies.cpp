#include "array_energies.hpp"

#include <algorithm>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/solar/group_weather.hpp"
#include "heatmatch/solar/mixed_energy.hpp"
#include "heatmatch/solar/panel_energy.hpp"

namespace heatmatch {

namespace {

StringPanel panel_in_string(const PanelInService& panel) {
    const int diodes = bypass_diodes_of(panel.panel);
    return {.diode = panel.today,
            .substrings = std::max(1, diodes),
            .bypass = diodes > 0,
            .noct_c = panel.panel.noct_c.value_or(usual_noct_c)};
}

}  // namespace

double ArraySeason::kwh(double bank_ohm, double wire_ohm) const {
    const double total_ohm = bank_ohm + wire_ohm;
    return panels * curve->delivered_kwh(total_ohm / factor) * bank_ohm / total_ohm;
}

ArrayEnergies::ArrayEnergies(const Parts& parts, const Installation& installation,
                             const RankOptions& options,
                             const std::shared_ptr<const Weather>& weather,
                             const ArrayFamily& family)
    : installation_(installation),
      options_(options),
      family_(family),
      weather_(weather),
      seasons_(weather, parts, installation, options) {
    for (std::size_t group = 0; group < installation.panels.size(); ++group) {
        const OwnedPanels& owned = installation.panels[group];
        PanelInService open =
            panel_in_service(owned, find_panel(parts, owned.panel), installation.site.record_low_c);
        groups_.groups.push_back({.owned = owned, .panel = open});
        const SeasonWeather& season = seasons_.of(group)->for_panel(open);
        // A blocking diode takes its share of each panel of a string: of a long one, hardly any.
        open.blocking = false;
        largest_kwh_.push_back(
            panel_energy(open, season.season, options.vector_width, 1).mpp_kwh());
    }
    sun_ = array_sun(groups_, *weather, installation.site);
}

std::optional<std::size_t> ArrayEnergies::only_group(const FamilyArray& array) const {
    if (array.strings.front() != array.strings.back()) return std::nullopt;
    const auto used = [](int panels) { return panels > 0; };
    if (std::count_if(array.panels.begin(), array.panels.end(), used) != 1) return std::nullopt;
    const auto first = std::find_if(array.panels.begin(), array.panels.end(), used);
    return static_cast<std::size_t>(first - array.panels.begin());
}

const ArrayEnergies::NodeSet& ArrayEnergies::nodes_of(const FamilyArray& array) {
    PlaneSet used(sun_.planes.size(), false);
    for (std::size_t g = 0; g < array.panels.size(); ++g) {
        if (array.panels[g] == 0) continue;
        used[sun_.groups[g].lit] = true;
        if (const auto shaded = sun_.groups[g].shaded) used[*shaded] = true;
    }
    const auto known = sets_.find(used);
    if (known != sets_.end()) return known->second;
    NodeSet set{.places = std::vector<std::size_t>(used.size(), 0)};
    std::vector<const Weather*> weathers;
    for (std::size_t p = 0; p < used.size(); ++p) {
        if (!used[p]) continue;
        set.places[p] = weathers.size();
        weathers.push_back(sun_.planes[p].get());
    }
    set.nodes = plane_nodes(
        weathers, season_node_options(installation_.goals.months, options_.exact_weather));
    // Shade on some substrings only lowers what such a panel delivers.
    std::vector<BoundGroup> groups;
    for (std::size_t g = 0; g < groups_.groups.size(); ++g) {
        groups.push_back(
            {.panel = panel_in_string(groups_.panel(g)), .plane = set.places[sun_.groups[g].lit]});
    }
    set.bound = ArrayBound(set.nodes, groups);
    return sets_.emplace(std::move(used), std::move(set)).first->second;
}

ArraySeason ArrayEnergies::equal_panels(const FamilyArray& array, std::size_t group) {
    const int parallel = static_cast<int>(array.strings.size());
    const int series = array.panels[group] / parallel;
    const PanelInService& panel = groups_.panel(group);
    auto& curve = curves_[{group, panel.blocking ? series : 1}];
    if (!curve) {
        const SeasonWeather& season = seasons_.of(group)->for_panel(panel);
        curve = std::make_shared<const EnergyCurve>(
            panel_energy(panel, season.season, options_.vector_width, series));
    }
    return {.curve = curve,
            .panels = series * parallel,
            .factor = static_cast<double>(series) / parallel};
}

ArraySeason ArrayEnergies::unlike_panels(const FamilyArray& array, const NodeSet& set) const {
    UnlikeArray made{.groups = groups_.groups};
    for (const std::size_t index : array.strings) {
        std::vector<std::size_t>& string = made.strings.emplace_back();
        const PanelCounts& counts = family_.strings[index].panels;
        for (std::size_t g = 0; g < counts.size(); ++g) {
            string.insert(string.end(), static_cast<std::size_t>(counts[g]), g);
        }
    }
    PlacedArray placed = sun_.placed(made, PanelState::today);
    for (PanelPlace& place : placed.places) place.plane = set.places[place.plane];
    placed.planes = set.nodes;
    const double match_ohm = stc_match_ohm(made.array(PanelState::today));
    return {.curve = std::make_shared<const EnergyCurve>(std::move(placed), match_ohm,
                                                         resistances_of_search)};
}

const ArraySeason& ArrayEnergies::season(std::size_t array) {
    const auto known = made_.find(array);
    if (known != made_.end()) return known->second;
    const FamilyArray& of = family_.arrays[array];
    const auto group = only_group(of);
    ArraySeason made = group ? equal_panels(of, *group) : unlike_panels(of, nodes_of(of));
    return made_.emplace(array, std::move(made)).first->second;
}

void ArrayEnergies::prepare(std::span<const std::size_t> arrays) {
    std::vector<const NodeSet*> sets;
    for (const std::size_t array : arrays) sets.push_back(&nodes_of(family_.arrays[array]));
    std::vector<ArraySeason> seasons(arrays.size());
    parallel_for(arrays.size(), worker_count(options_.threads, arrays.size()),
                 [&](std::size_t i, std::size_t, const Pulse&) {
                     seasons[i] = unlike_panels(family_.arrays[arrays[i]], *sets[i]);
                 });
    for (std::size_t i = 0; i < arrays.size(); ++i) made_.emplace(arrays[i], seasons[i]);
}

const std::vector<double>& ArrayEnergies::at_most_kwh(std::size_t array,
                                                      std::span<const double> ohm) {
    std::vector<double>& most = at_most_kwh_[array];
    if (!most.empty()) return most;
    const FamilyArray& of = family_.arrays[array];
    const NodeSet& set = nodes_of(of);
    const ArrayLimits limits = set.bound.limits(family_, of);
    most.reserve(ohm.size() + 1);
    for (const double each : ohm) most.push_back(set.bound.at_most_kwh(limits, each));
    most.push_back(set.bound.at_most_kwh(limits));
    return most;
}

double ArrayEnergies::largest_kwh(const PanelCounts& panels) const {
    double sum = 0.0;
    for (std::size_t g = 0; g < panels.size(); ++g) sum += panels[g] * largest_kwh_[g];
    return (1.0 + curve_allowance) * sum;
}

double ArrayEnergies::days() const {
    return seasons_.first()->days;
}

const Sentences& ArrayEnergies::remarks() const {
    return seasons_.first()->remarks;
}

}  // namespace heatmatch
