#pragma once

#include <memory>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// The installation's own twelve months as weather, the last one kept at hand; null where it has
/// none, or, with a remark, where its site does not tell latitude and tilt.
[[nodiscard]] std::shared_ptr<const Weather> own_weather(const Installation& installation,
                                                         Sentences& remarks);

}  // namespace heatmatch
