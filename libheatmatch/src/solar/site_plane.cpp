#include "site_plane.hpp"

#include "degrees.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

double known(const std::optional<double>& value, const char* field, Sentence remedy) {
    if (value) return *value;
    throw InvalidInput(ErrorDetail{.part = "site",
                                   .field = field,
                                   .value = "(missing)",
                                   .allowed = "given, for the sun on the panels",
                                   .remedy = std::move(remedy)});
}

/// A list by month, or one value for all months.
std::array<double, 12> by_month(const std::vector<double>& list, double otherwise) {
    std::array<double, 12> filled{};
    filled.fill(otherwise);
    std::copy_n(list.begin(), std::min<std::size_t>(list.size(), 12), filled.begin());
    return filled;
}

double light_behind_glass(const SitePlane& site, const SkyMoment& moment,
                          const SkyIrradiance& sky) {
    const Plane& plane = site.plane[moment.month];
    return behind_glass(light_on_glass(site, moment, sky), plane,
                        incidence_angle_deg(plane, moment.sun))
               .total_w_m2() *
           site.clean[moment.month];
}

/// The row layout, with its assumed values.
RowLayout row_layout(const Site& site, double tilt_deg, std::vector<Assumption>& assumed) {
    constexpr double usual_height_m = 1.0;
    const auto metres = [&](const std::optional<double>& given, const char* field, double usual) {
        if (!given) {
            assumed.push_back({.part = "site",
                               .field = field,
                               .value = sentence_of(Amount{usual, unit::metre}),
                               .source = say<"solar.class_default">()});
        }
        return given.value_or(usual);
    };
    const RowLayout layout{
        .tilt_deg = tilt_deg,
        .height_m = metres(site.panel_height_m, "panel_height_m", usual_height_m),
        .slant_m = metres(site.row_slant_m, "row_slant_m", usual_row_slant_m),
        .pitch_m = site.row_pitch_m};
    if (!site.row_pitch_m) {
        assumed.push_back({.part = "site",
                           .field = "row_pitch_m",
                           .value = say<"solar.one_row">(),
                           .source = say<"solar.class_default">()});
    }
    return layout;
}

}  // namespace

SitePlane site_plane(const Site& site) {
    check_record(site_fields(), &site, "site");
    check_site(site);
    SitePlane result;
    const auto assume = [&result](const char* field, Sentence value, Sentence source) {
        result.assumed.push_back({.part = "site",
                                  .field = field,
                                  .value = std::move(value),
                                  .source = std::move(source)});
    };
    const auto number = [](double value, const Unit& in = unit::none) {
        return sentence_of(Amount{value, in});
    };
    const auto none_at_all = [] { return say<"solar.per_cent">(with<"share">(0.0)); };
    const auto by_class = [] { return say<"solar.class_default">(); };
    result.place.latitude_deg =
        known(site.latitude_deg, "latitude_deg", say<"solar.north_positive">());
    result.place.longitude_deg =
        known(site.longitude_deg, "longitude_deg", say<"solar.east_positive">());
    const double tilt = known(site.tilt_deg, "tilt_deg",
                              say<"solar.tilts">(with<"flat">(0.0), with<"upright">(90.0)));
    if (!site.elevation_m) assume("elevation_m", number(0.0, unit::metre), by_class());
    result.place.elevation_m = site.elevation_m.value_or(0.0);
    const double towards_equator = result.place.latitude_deg < 0.0 ? 0.0 : 180.0;
    if (!site.azimuth_deg && tilt > 0.0) {
        assume("azimuth_deg",
               say<"solar.towards_equator">(with<"azimuth">(towards_equator, unit::degree)),
               by_class());
    }
    constexpr double grass_albedo = 0.2;
    if (!site.albedo && site.albedo_by_month.empty())
        assume("albedo", number(grass_albedo), sentence_of(Name{"pvlib-albedo"}));
    constexpr double usual_turbidity = 3.0;
    if (site.linke_turbidity.empty())
        assume("linke_turbidity", number(usual_turbidity), sentence_of(Name{"common-practice"}));
    if (site.snow_cover_pct.empty()) assume("snow_cover_pct", none_at_all(), by_class());
    if (site.soiling_pct.empty()) assume("soiling_pct", none_at_all(), by_class());
    result.rear = RearView(row_layout(site, tilt, result.rear_assumed));
    const auto albedo = by_month(site.albedo_by_month, site.albedo.value_or(grass_albedo));
    const auto snow = by_month(site.snow_cover_pct, 0.0);
    const auto dirt = by_month(site.soiling_pct, 0.0);
    result.linke_turbidity = by_month(site.linke_turbidity, usual_turbidity);
    for (std::size_t month = 0; month < 12; ++month) {
        result.plane[month] = {.tilt_deg = tilt,
                               .azimuth_deg = site.azimuth_deg.value_or(towards_equator),
                               .albedo = albedo[month]};
        result.clean[month] = 1.0 - dirt[month] / 100.0;
        result.bare[month] = 1.0 - snow[month] / 100.0;
    }
    return result;
}

double SkyMoment::cosine() const {
    return std::max(0.0, std::cos(radians(sun.apparent_zenith_deg)));
}

SkyMoment sky_moment(const SitePlane& site, double unix_time_s) {
    using namespace std::chrono;
    constexpr double second_per_degree = 240.0;
    const double solar_s = unix_time_s + site.place.longitude_deg * second_per_degree;
    const auto day = floor<days>(sys_seconds(seconds(static_cast<long long>(std::floor(solar_s)))));
    return {.month = static_cast<unsigned>(year_month_day(day).month()) - 1U,
            .sun = sun_position(site.place, unix_time_s),
            .extraterrestrial_w_m2 = extraterrestrial_normal_w_m2(unix_time_s)};
}

SkyIrradiance clear_sky_at(const SitePlane& site, const SkyMoment& moment) {
    return ineichen_clear_sky(moment.sun.apparent_zenith_deg,
                              {.elevation_m = site.place.elevation_m,
                               .linke_turbidity = site.linke_turbidity[moment.month],
                               .extraterrestrial_w_m2 = moment.extraterrestrial_w_m2});
}

PlaneIrradiance light_on_glass(const SitePlane& site, const SkyMoment& moment,
                               const SkyIrradiance& sky) {
    return plane_irradiance(site.plane[moment.month], moment.sun, sky,
                            moment.extraterrestrial_w_m2);
}

void append_row(Weather& weather, const SitePlane& site, const SkyMoment& moment,
                const SkyIrradiance& sky, const PanelAir& air, double hours) {
    const SkyIrradiance clouded{.ghi_w_m2 = sky.dhi_w_m2, .dhi_w_m2 = sky.dhi_w_m2};
    if (weather.hours.empty()) weather.rear_assumed = site.rear_assumed;
    const SkyIrradiance clear = clear_sky_at(site, moment);
    const Plane& plane = site.plane[moment.month];
    const SunBehind behind = site.rear.sun_behind(plane, moment.sun);
    const auto on_back = [&](const SkyIrradiance& under) {
        const PlaneIrradiance light =
            site.rear.on_back(behind, plane, moment.sun, under, moment.extraterrestrial_w_m2);
        return site.rear.behind_glass(light, behind).total_w_m2();
    };
    weather.rear_w_m2.push_back(on_back(sky));
    weather.rear_clear_w_m2.push_back(on_back(clear));
    weather.rear_overcast_w_m2.push_back(on_back(clouded));
    weather.irradiance_w_m2.push_back(light_behind_glass(site, moment, sky));
    weather.clear_w_m2.push_back(light_behind_glass(site, moment, clear));
    weather.overcast_w_m2.push_back(light_behind_glass(site, moment, clouded));
    weather.base_c.push_back(air.air_c);
    weather.heating_irradiance_w_m2.push_back(light_on_glass(site, moment, sky).total_w_m2() *
                                              air.wind_factor);
    weather.hours.push_back(hours * site.bare[moment.month]);
    weather.month.push_back(static_cast<std::uint8_t>(moment.month + 1));
    weather.days[moment.month] += hours / 24.0;
}

}  // namespace heatmatch
