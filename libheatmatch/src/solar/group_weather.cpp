#include "heatmatch/solar/group_weather.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/sky.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

std::string title_of_group(const OwnedPanels& owned) {
    return "panels " + quote(owned.group, 80);
}

double azimuth_of(const Site& site) {
    return site.azimuth_deg.value_or(site.latitude_deg.value_or(0.0) < 0.0 ? 0.0 : 180.0);
}

/// The weather of its plane; null where that is the plane of the site.
std::shared_ptr<const Weather> plane_weather(const Weather& weather, const OwnedPanels& owned,
                                             const Site& site) {
    const Site own = site_of_group(site, owned);
    if (own.tilt_deg == site.tilt_deg && azimuth_of(own) == azimuth_of(site)) return nullptr;
    const auto& sky = weather.sky.made_from;
    if (!sky) {
        const std::string tilt =
            own.tilt_deg ? format_number(*own.tilt_deg) + " deg" : std::string("not stated");
        throw InvalidInput(
            ErrorDetail{.part = title_of_group(owned),
                        .field = "tilt_deg, azimuth_deg",
                        .value = tilt + ", " + format_number(azimuth_of(own)) + " deg",
                        .allowed = "those of the site, whose plane alone this weather has",
                        .remedy = say<"solar.need_sky">()});
    }
    const double tilt_deg = own.tilt_deg ? *own.tilt_deg : *sky->rows().site.tilt_deg;
    return sky->on_plane(tilt_deg, azimuth_of(own));
}

/// Share of light lost in each row.
std::vector<double> shade_of_rows(const Weather& weather, const OwnedPanels& owned,
                                  const Sky* sky) {
    const auto& table = owned.shade_pct;
    const bool by_hour = table.size() == shades_by_hour;
    const bool known = table.size() == 1 || (std::find(weather.month.begin(), weather.month.end(),
                                                       0) == weather.month.end() &&
                                             (!by_hour || sky != nullptr));
    if (!known) {
        throw InvalidInput(ErrorDetail{.part = title_of_group(owned),
                                       .field = "shade_pct",
                                       .value = std::to_string(table.size()) + " numbers",
                                       .allowed = "one number for a weather without times",
                                       .remedy = say<"solar.need_sky">()});
    }
    std::vector<double> share(weather.size());
    for (std::size_t row = 0; row < weather.size(); ++row) {
        const std::size_t month = weather.month[row] - 1U;
        const std::size_t entry = table.size() == 1 ? 0
                                  : by_hour         ? month * 24 + sky->rows().hour_of_day(row)
                                                    : month;
        share[row] = table[entry] / 100.0;
    }
    return share;
}

}  // namespace

Site site_of_group(const Site& site, const OwnedPanels& owned) {
    Site own = site;
    if (owned.tilt_deg) own.tilt_deg = owned.tilt_deg;
    if (owned.azimuth_deg) own.azimuth_deg = owned.azimuth_deg;
    return own;
}

std::shared_ptr<const Weather> group_weather(const Weather& weather, const OwnedPanels& owned,
                                             const Site& site, bool whole_panels) {
    if (!owned.has_own_weather()) return nullptr;
    auto plane = plane_weather(weather, owned, site);
    if (owned.shade_pct.empty()) return plane;
    auto shaded = std::make_shared<Weather>(plane ? *plane : weather);
    std::vector<double> lost = shade_of_rows(*shaded, owned, weather.sky.made_from.get());
    shaded->sky = {};
    if (owned.shaded_substrings && !whole_panels) {
        shaded->shaded_share = std::move(lost);
        return shaded;
    }
    for (auto* light : {&shaded->irradiance_w_m2, &shaded->heating_irradiance_w_m2,
                        &shaded->clear_w_m2, &shaded->overcast_w_m2, &shaded->rear_w_m2,
                        &shaded->rear_clear_w_m2, &shaded->rear_overcast_w_m2}) {
        for (std::size_t row = 0; row < light->size(); ++row) (*light)[row] *= 1.0 - lost[row];
    }
    return shaded;
}

double brightest_of_group(const Weather& weather, const OwnedPanels& owned, const Site& site) {
    const auto plane = plane_weather(weather, owned, site);
    const auto& sun = (plane ? *plane : weather).irradiance_w_m2;
    return sun.empty() ? 0.0 : *std::max_element(sun.begin(), sun.end());
}

}  // namespace heatmatch
