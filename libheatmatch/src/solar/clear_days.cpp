#include "heatmatch/solar/clear_days.hpp"

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
    for (const YearHour& hour : solar_year(plane)) {
        append_row(weather, plane, hour.moment, clear_sky_at(plane, hour.moment),
                   {.air_c = normals ? air_at_hour(*normals, hour) : usual_air_c}, 1.0);
    }
    return weather;
}

}  // namespace heatmatch
