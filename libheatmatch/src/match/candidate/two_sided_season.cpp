#include "heatmatch/match/candidate/two_sided_season.hpp"

#include "sentences.hpp"

#include <array>
#include <utility>

#include "heatmatch/solar/rear_light.hpp"

namespace heatmatch {

using candidate_sentences::say;

void add_two_sided(SeasonWeather& season, const Weather& weather, std::span<const int> months,
                   bool exact, const PanelInService& panel) {
    const RearShare& rear = panel.rear;
    if (rear.none() || &season.for_panel(panel) != &season) return;
    SeasonWeather both = season_weather(with_rear_irradiance(weather, rear.typical), months, exact);
    both.rear = rear;
    both.brightest_w_m2 = season.brightest_w_m2;  // margins add rear light separately
    if (weather.rear_w_m2.empty()) {
        both.remarks.push_back(say<"season.rear_not_known">());
    } else {
        const NodeOptions options = season_node_options(both.months, exact);
        const std::array ends{with_rear_irradiance(weather, rear.low),
                              with_rear_irradiance(weather, rear.high)};
        for (const Weather& end : ends) both.rear_ends.push_back(weather_nodes(end, options));
        for (const Weather& end : ends) {
            if (!end.has_cloud_band()) continue;
            both.rear_ends.push_back(weather_nodes(split_by_cloud(end), options));
        }
        both.assumed.insert(both.assumed.end(), weather.rear_assumed.begin(),
                            weather.rear_assumed.end());
    }
    season.two_sided.push_back(std::move(both));
}

}  // namespace heatmatch
