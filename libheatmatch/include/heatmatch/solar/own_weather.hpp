#pragma once

#include <memory>
#include <mutex>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Keeps the last year of hours, because computing it takes longer than a ranking. Several threads
/// may use one.
class WeatherMemory {
  public:
    /// weather_from_months(), or its last result where months and site are equal except for values
    /// that only margins use: record low, wet, covers, bright irradiance.
    [[nodiscard]] std::shared_ptr<const Weather> weather_of(const Site& site,
                                                            const MonthlyNormals& normals);

  private:
    /// All inputs of the year of hours.
    struct Key {
        Site site{};
        MonthlyNormals normals{};

        friend bool operator==(const Key&, const Key&) = default;
    };

    std::mutex guard_{};
    Key key_{};
    std::shared_ptr<const Weather> weather_{};
};

/// The installation's own twelve months as weather, computed with `memory` unless that is null.
/// Null without such months, or, with a remark, where its site does not state latitude and tilt.
[[nodiscard]] std::shared_ptr<const Weather> own_weather(const Installation& installation,
                                                         Sentences& remarks,
                                                         WeatherMemory* memory = nullptr);

}  // namespace heatmatch
