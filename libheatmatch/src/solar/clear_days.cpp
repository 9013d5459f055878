#include "heatmatch/solar/clear_days.hpp"

#include "kept_sky.hpp"
#include "sentences.hpp"
#include "solar_year.hpp"

namespace heatmatch {

using solar_sentences::say;

Weather clear_days(const Site& site, const std::optional<MonthlyNormals>& normals) {
    const SitePlane plane = plane_by_the_sun(site);
    Weather weather{.first_hour = 0.0, .assumed = plane.assumed};
    weather.assumed.push_back(still_wind_assumption());
    constexpr double usual_air_c = 10.0;
    if (normals) {
        check_record(monthly_normals_fields(), &*normals, "weather");
        check_monthly_normals(*normals);
    } else {
        weather.assumed.push_back({.part = "weather",
                                   .field = "air_c",
                                   .value = sentence_of(Amount{usual_air_c, unit::celsius}),
                                   .source = say<"solar.class_default">()});
    }
    SkyRows rows{.site = site};
    for (const YearHour& hour : solar_year(plane)) {
        const SkyIrradiance sky = clear_sky_at(plane, hour.moment);
        const PanelAir air{.air_c = normals ? air_at_hour(*normals, hour) : usual_air_c};
        append_row(weather, plane, hour.moment, sky, air, 1.0);
        append_sky(rows, hour.unix_time_s, sky, air, 1.0);
    }
    keep_sky(weather, std::move(rows), plane.assumed.size());
    return weather;
}

}  // namespace heatmatch
