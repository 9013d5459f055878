#include "heatmatch/solar/own_weather.hpp"

#include "sentences.hpp"

#include "heatmatch/solar/monthly_weather.hpp"

namespace heatmatch {

using solar_sentences::say;

std::shared_ptr<const Weather> WeatherMemory::weather_of(const Site& site,
                                                         const MonthlyNormals& normals) {
    Key key{.site = site, .normals = normals};
    // Values that only margins use do not affect the weather.
    key.site.record_low_c = 0.0;
    key.site.wet.reset();
    key.site.live_parts_enclosed.reset();
    key.site.bright_irradiance_w_m2 = 0.0;
    const std::scoped_lock lock(guard_);
    if (!weather_ || !(key_ == key)) {
        weather_ = std::make_shared<const Weather>(weather_from_months(normals, site));
        key_ = key;
    }
    return weather_;
}

std::shared_ptr<const Weather> own_weather(const Installation& installation, Sentences& remarks,
                                           WeatherMemory* memory) {
    if (!installation.weather) return nullptr;
    const Site& site = installation.site;
    if (!site.latitude_deg || !site.tilt_deg) {
        remarks.push_back(say<"solar.months_not_used">(
            with<"field">(Name{site.latitude_deg ? "tilt_deg" : "latitude_deg"})));
        return nullptr;
    }
    if (memory != nullptr) return memory->weather_of(site, *installation.weather);
    return std::make_shared<const Weather>(weather_from_months(*installation.weather, site));
}

}  // namespace heatmatch
