#pragma once

#include <memory>

#include "heatmatch/setting/owned.hpp"
#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// The site with the plane of a group of panels.
[[nodiscard]] Site site_of_group(const Site& site, const OwnedPanels& owned);

/// Weather of a group: on its own plane and in its own shade, made from the sky that `weather` was
/// made from. Null where the group has neither: `weather` itself then serves. Throws InvalidInput
/// where the weather has no sky and the group needs one. Where the shade falls on some substrings
/// only, `shaded_share` has it; with `whole_panels` it falls on all of them, which gives less.
[[nodiscard]] std::shared_ptr<const Weather> group_weather(const Weather& weather,
                                                           const OwnedPanels& owned,
                                                           const Site& site,
                                                           bool whole_panels = false);

/// The brightest row on the group's plane without its shade, which may move [W/m2].
[[nodiscard]] double brightest_of_group(const Weather& weather, const OwnedPanels& owned,
                                        const Site& site);

}  // namespace heatmatch
