#include <algorithm>
#include <utility>

#include "heatmatch/match/candidate/unlike_season.hpp"
#include "heatmatch/solar/group_weather.hpp"
#include "heatmatch/solar/rear_light.hpp"

namespace heatmatch {

namespace {

double share_of_rear(const RearShare& rear, RearEnd end) {
    switch (end) {
        case RearEnd::low:
            return rear.low;
        case RearEnd::typical:
            return rear.typical;
        case RearEnd::high:
            return rear.high;
        case RearEnd::none:
            break;
    }
    return 0.0;
}

/// The index of a plane, added where it is new.
std::size_t index_of_plane(ArraySun& sun, const Weather& weather, double rear) {
    auto plane =
        std::make_shared<const Weather>(rear > 0.0 ? with_rear_irradiance(weather, rear) : weather);
    for (std::size_t i = 0; i < sun.planes.size(); ++i) {
        if (*sun.planes[i] == *plane) return i;
    }
    sun.planes.push_back(std::move(plane));
    return sun.planes.size() - 1;
}

}  // namespace

ArraySun array_sun(const UnlikeArray& array, const Weather& weather, const Site& site,
                   RearEnd rear) {
    ArraySun sun;
    for (const GroupInArray& group : array.groups) {
        const double share = share_of_rear(group.panel.rear, rear);
        const bool in_part = group.owned.shaded_substrings && !group.owned.shade_pct.empty();
        OwnedPanels lit = group.owned;
        if (in_part) lit.shade_pct.clear();
        const auto own = group_weather(weather, lit, site, true);
        ArraySun::OfGroup of_group{.lit = index_of_plane(sun, own ? *own : weather, share)};
        if (in_part) {
            const auto dark = group_weather(weather, group.owned, site, true);
            of_group.shaded = index_of_plane(sun, *dark, share);
        }
        sun.groups.push_back(of_group);
        sun.brightest_w_m2 =
            std::max(sun.brightest_w_m2, brightest_of_group(weather, group.owned, site));
    }
    return sun;
}

std::vector<const Weather*> ArraySun::all() const {
    std::vector<const Weather*> list;
    for (const auto& plane : planes) list.push_back(plane.get());
    return list;
}

PlacedArray ArraySun::placed(const UnlikeArray& array, PanelState state) const {
    PlacedArray placed{.array = array.array(state)};
    for (std::size_t s = 0; s < array.strings.size(); ++s) {
        std::vector<StringPanel> panels;
        for (std::size_t p = 0; p < array.strings[s].size(); ++p) {
            const std::size_t g = array.strings[s][p];
            const StringPanel& whole = placed.array.strings[s].panels[p];
            const auto add = [&](int count, std::size_t plane) {
                if (count == 0) return;
                StringPanel part = whole;
                part.substrings = count;
                if (count < whole.substrings) {
                    part.diode =
                        whole.diode.scaled(1.0, static_cast<double>(count) / whole.substrings);
                }
                panels.push_back(std::move(part));
                placed.places.push_back({.plane = plane, .noct_c = whole.noct_c});
            };
            const int shaded =
                groups[g].shaded ? std::clamp(array.panel(g).shaded_substrings, 1, whole.substrings)
                                 : 0;
            add(whole.substrings - shaded, groups[g].lit);
            if (shaded > 0) add(shaded, *groups[g].shaded);
        }
        placed.array.strings[s].panels = std::move(panels);
    }
    return placed;
}

}  // namespace heatmatch
