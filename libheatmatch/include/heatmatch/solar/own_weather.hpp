#pragma once

#include <memory>
#include <mutex>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Keeps the year of hours that was made last, for making it takes longer than ranking with it.
/// Several threads may use one.
class WeatherMemory {
  public:
    /// weather_from_months(), or the same from the last call where months and site are the same but
    /// for what margins are judged at: record low, wet, covers, bright irradiance.
    [[nodiscard]] std::shared_ptr<const Weather> weather_of(const Site& site,
                                                            const MonthlyNormals& normals);

  private:
    /// All that the year depends on.
    struct Key {
        Site site{};
        MonthlyNormals normals{};

        friend bool operator==(const Key&, const Key&) = default;
    };

    std::mutex guard_{};
    Key key_{};
    std::shared_ptr<const Weather> weather_{};
};

/// The installation's own twelve months as weather, made with `memory` unless that is null; null
/// where it has none, or, with a remark, where its site does not tell latitude and tilt.
[[nodiscard]] std::shared_ptr<const Weather> own_weather(const Installation& installation,
                                                         Sentences& remarks,
                                                         WeatherMemory* memory = nullptr);

}  // namespace heatmatch
