#include "heatmatch/solar/own_weather.hpp"

#include <mutex>

#include "heatmatch/solar/monthly_weather.hpp"

namespace heatmatch {

std::shared_ptr<const Weather> own_weather(const Installation& installation, Sentences& remarks) {
    if (!installation.weather) return nullptr;
    const Site& site = installation.site;
    if (!site.latitude_deg || !site.tilt_deg) {
        remarks.push_back(
            std::string("The twelve months of weather are not used: the site lacks ") +
            (site.latitude_deg ? "tilt_deg." : "latitude_deg."));
        return nullptr;
    }
    // Making a year of hours takes longer than ranking with it, and is asked for again and again.
    struct Last {
        Site site{};
        MonthlyNormals normals{};
        std::shared_ptr<const Weather> weather{};
    };
    static std::mutex guard;
    static Last last;
    const std::scoped_lock lock(guard);
    if (!last.weather || !(last.site == site) || !(last.normals == *installation.weather)) {
        last = {.site = site,
                .normals = *installation.weather,
                .weather = std::make_shared<const Weather>(
                    weather_from_months(*installation.weather, site))};
    }
    return last.weather;
}

}  // namespace heatmatch
