#include "group_seasons.hpp"

#include <algorithm>

#include "heatmatch/match/candidate/two_sided_season.hpp"
#include "heatmatch/solar/group_weather.hpp"

namespace heatmatch {

namespace {

bool same_sun(const OwnedPanels& a, const OwnedPanels& b) {
    return a.tilt_deg == b.tilt_deg && a.azimuth_deg == b.azimuth_deg &&
           a.shade_pct == b.shade_pct && a.shaded_substrings == b.shaded_substrings;
}

/// Adds the season of a bifacial panel.
void add_back(SeasonWeather& season, const Weather& weather, const OwnedPanels& owned,
              const Parts& parts, const Installation& installation, bool exact) {
    const Panel& panel = find_panel(parts, owned.panel);
    // Most panels are not bifacial: nothing is fitted for them.
    const bool may_take = panel.bifaciality.value_or(0.0) > 0.0 || labelled_bifaciality(panel);
    if (!may_take || owned.rear_blocked.value_or(false)) return;
    add_two_sided(season, weather, installation.goals.months, exact,
                  panel_in_service(owned, panel, installation.site.record_low_c));
}

}  // namespace

GroupSeasons::GroupSeasons(const std::shared_ptr<const Weather>& weather, const Parts& parts,
                           const Installation& installation, const RankOptions& options)
    : of_group_(installation.panels.size(), -1) {
    const bool exact = options.exact_weather;
    for (std::size_t group = 0; group < installation.panels.size(); ++group) {
        const OwnedPanels& owned = installation.panels[group];
        if (!options.group.empty() && options.group != owned.group) continue;
        auto known = std::find_if(entries_.begin(), entries_.end(), [&owned](const Entry& entry) {
            return same_sun(entry.owned, owned);
        });
        if (known == entries_.end()) {
            auto own = group_weather(*weather, owned, installation.site);
            if (!own) own = weather;
            entries_.push_back({.owned = owned,
                                .weather = own,
                                .season = season_weather(*own, installation.goals.months, exact)});
            known = std::prev(entries_.end());
            known->season.brightest_w_m2 =
                std::max(known->season.brightest_w_m2,
                         brightest_of_group(*weather, owned, installation.site));
        }
        add_back(known->season, *known->weather, owned, parts, installation, exact);
        of_group_[group] = static_cast<int>(known - entries_.begin());
    }
}

const SeasonWeather* GroupSeasons::brightest() const {
    const auto found =
        std::max_element(entries_.begin(), entries_.end(), [](const Entry& a, const Entry& b) {
            return a.season.brightest_w_m2 < b.season.brightest_w_m2;
        });
    return found == entries_.end() ? nullptr : &found->season;
}

}  // namespace heatmatch
