#include "heatmatch/match/candidate/two_sided_season.hpp"

#include "sentences.hpp"

#include <utility>

#include "heatmatch/solar/rear_light.hpp"

namespace heatmatch {

using candidate_sentences::say;

void add_two_sided(SeasonWeather& season, const Weather& weather, std::span<const int> months,
                   bool exact, const PanelInService& panel) {
    const RearShare& rear = panel.rear;
    if (rear.none() || &season.for_panel(panel) != &season) return;
    SeasonWeather both = season_weather(with_light_behind(weather, rear.typical), months, exact);
    both.rear = rear;
    both.brightest_w_m2 = season.brightest_w_m2;  // margins count the light behind by themselves
    if (weather.rear_w_m2.empty()) {
        both.remarks.push_back(say<"season.rear_not_known">());
    } else {
        const NodeOptions options = season_node_options(both.months, exact);
        both.rear_low = weather_nodes(with_light_behind(weather, rear.low), options);
        both.rear_high = weather_nodes(with_light_behind(weather, rear.high), options);
        both.assumed.insert(both.assumed.end(), weather.rear_assumed.begin(),
                            weather.rear_assumed.end());
    }
    season.two_sided.push_back(std::move(both));
}

}  // namespace heatmatch
