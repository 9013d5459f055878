#include "heatmatch/setting/site.hpp"

#include "base/sentences.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

using setting_sentences::say;

namespace {

void expect_twelve(const std::vector<double>& list, const char* part, const char* field) {
    if (list.size() == 12) return;
    throw InvalidInput(ErrorDetail{.part = part,
                                   .field = field,
                                   .value = std::to_string(list.size()) + " values",
                                   .allowed = "12 values, January first",
                                   .remedy = say<"setting.each_month">()});
}

}  // namespace

std::span<const Field> site_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&Site::latitude_deg>({.name = "latitude_deg",
                                   .kind = FieldKind::number,
                                   .unit = unit::degree,
                                   .range = {.low = -90.0, .high = 90.0},
                                   .meaning = "latitude, north positive"}),
        bind<&Site::longitude_deg>({.name = "longitude_deg",
                                    .kind = FieldKind::number,
                                    .unit = unit::degree,
                                    .range = {.low = -180.0, .high = 180.0},
                                    .meaning = "longitude, east positive"}),
        bind<&Site::elevation_m>({.name = "elevation_m",
                                  .kind = FieldKind::number,
                                  .unit = unit::metre,
                                  .range = {.low = -450.0, .high = 6000.0},
                                  .meaning = "height above sea level"}),
        bind<&Site::tilt_deg>({.name = "tilt_deg",
                               .kind = FieldKind::number,
                               .unit = unit::degree,
                               .range = {.low = 0.0, .high = 90.0},
                               .meaning = "tilt of the panels, 0 flat, 90 upright"}),
        bind<&Site::azimuth_deg>({.name = "azimuth_deg",
                                  .kind = FieldKind::number,
                                  .unit = unit::degree,
                                  .range = {.low = 0.0, .high = 360.0},
                                  .meaning = "azimuth of the panels, clockwise from north"}),
        bind<&Site::record_low_c>(
            {.name = "record_low_c",
             .kind = FieldKind::number,
             .unit = unit::celsius,
             .range = {.low = -70.0, .high = 40.0},
             .required = true,
             .meaning = "record low air temperature: it determines the cold voltage",
             .remedy = say<"setting.ask_station">()}),
        bind<&Site::albedo>({.name = "albedo",
                             .kind = FieldKind::number,
                             .unit = unit::none,
                             .range = {.low = 0.0, .high = 1.0},
                             .meaning = "albedo: share of light reflected by the ground"}),
        bind<&Site::albedo_by_month>(
            {.name = "albedo_by_month",
             .kind = FieldKind::numbers,
             .unit = unit::none,
             .range = {.low = 0.0, .high = 1.0},
             .meaning = "monthly albedo of the ground, snow included, January first"}),
        bind<&Site::panel_height_m>(
            {.name = "panel_height_m",
             .kind = FieldKind::number,
             .unit = unit::metre,
             .range = {.low = 0.0, .high = 30.0},
             .meaning =
                 "height of the panels' lower edge above the ground; determines rear irradiance "
                 "of bifacial panels"}),
        bind<&Site::row_slant_m>(
            {.name = "row_slant_m",
             .kind = FieldKind::number,
             .unit = unit::metre,
             .range = {.low = 0.2, .high = 20.0},
             .meaning = "length of a row of panels up its slope, from lower to upper edge"}),
        bind<&Site::row_pitch_m>(
            {.name = "row_pitch_m",
             .kind = FieldKind::number,
             .unit = unit::metre,
             .range = {.low = 0.2, .high = 200.0},
             .meaning = "distance from row to row along the ground; one row if omitted"}),
        bind<&Site::snow_cover_pct>(
            {.name = "snow_cover_pct",
             .kind = FieldKind::numbers,
             .unit = unit::percent,
             .range = {.low = 0.0, .high = 100.0},
             .meaning = "share of each month with snow on the panels, January first"}),
        bind<&Site::soiling_pct>(
            {.name = "soiling_pct",
             .kind = FieldKind::numbers,
             .unit = unit::percent,
             .range = {.low = 0.0, .high = 90.0},
             .meaning = "share of the light lost to dirt on the panels, January first"}),
        bind<&Site::linke_turbidity>(
            {.name = "linke_turbidity",
             .kind = FieldKind::numbers,
             .unit = unit::none,
             .range = {.low = 1.0, .high = 10.0},
             .meaning = "Linke turbidity of clear air: 2 clean, 3 usual, 5 hazy, January first"}),
        bind<&Site::wet>(
            {.name = "wet",
             .kind = FieldKind::flag,
             .meaning = "people touch things here with wet hands or feet; unstated counts as wet",
             .careful = true,
             .careful_source = "iec-60364-4-41"}),
        bind<&Site::array_on>({.name = "array_on",
                               .kind = FieldKind::choice,
                               .meaning = "support of the panels",
                               .careful = std::string("building"),
                               .careful_source = "nec-690-12"}),
        bind<&Site::earthing>(
            {.name = "earthing",
             .kind = FieldKind::choice,
             .meaning = "earthing of the array; grounded: one pole is solidly earthed",
             .careful = std::string("floating"),
             .careful_source = "nec-690-41"}),
        bind<&Site::frames_bonded>(
            {.name = "frames_bonded",
             .kind = FieldKind::flag,
             .meaning = "frames of the panels are bonded to one another and to earth",
             .careful = false,
             .careful_source = "nec-690-43"}),
        bind<&Site::live_parts_enclosed>(
            {.name = "live_parts_enclosed",
             .kind = FieldKind::flag,
             .meaning = "every live part is insulated or behind a cover that needs a tool",
             .careful = false,
             .careful_source = "iec-60364-4-41"}),
        bind<&Site::bright_irradiance_w_m2>(
            {.name = "bright_irradiance_w_m2",
             .kind = FieldKind::number,
             .unit = unit::watt_per_m2,
             .range = {.low = 500.0, .high = 2000.0},
             .meaning = "irradiance at which margins are judged; 1250 for snow or cloud edge"}),
        bind<&Site::code>(
            {.name = "code",
             .kind = FieldKind::choice,
             .meaning =
                 "wiring code, National Electrical Code or IEC 60364; if not stated, both, with "
                 "the smaller ampacity"}),
    });
    return fields;
}

std::span<const Field> monthly_normals_fields() {
    constexpr Range air{.low = -70.0, .high = 60.0};
    static const auto fields = std::to_array<Field>({
        bind<&MonthlyNormals::sun_hours>(
            {.name = "sun_hours",
             .kind = FieldKind::numbers,
             .unit = unit::kilowatt_hour_per_m2,
             .range = {.low = 0.0, .high = 15.0},
             .required = true,
             .meaning = "daily sum of irradiance on the panels, kWh/m² a day (peak sun hours), "
                        "mean of each month, January first"}),
        bind<&MonthlyNormals::temp_min_c>({.name = "temp_min_c",
                                           .kind = FieldKind::numbers,
                                           .unit = unit::celsius,
                                           .range = air,
                                           .required = true,
                                           .meaning = "mean daily low of the air, January first"}),
        bind<&MonthlyNormals::temp_max_c>({.name = "temp_max_c",
                                           .kind = FieldKind::numbers,
                                           .unit = unit::celsius,
                                           .range = air,
                                           .required = true,
                                           .meaning = "mean daily high of the air, January first"}),
    });
    return fields;
}

void check_site(const Site& site) {
    const auto expect_year = [](const std::vector<double>& list, const char* field) {
        if (!list.empty()) expect_twelve(list, "site", field);
    };
    expect_year(site.albedo_by_month, "albedo_by_month");
    expect_year(site.snow_cover_pct, "snow_cover_pct");
    expect_year(site.soiling_pct, "soiling_pct");
    expect_year(site.linke_turbidity, "linke_turbidity");
    const double depth_m = site.row_slant_m.value_or(usual_row_slant_m) *
                           std::cos(site.tilt_deg.value_or(90.0) * pi / 180.0);
    if (!site.row_pitch_m || *site.row_pitch_m > depth_m) return;
    throw InvalidInput(
        ErrorDetail{.part = "site",
                    .field = "row_pitch_m",
                    .value = format_number(*site.row_pitch_m) + " m",
                    .allowed = "> " + format_number(depth_m, 3) + " m, the depth of a row",
                    .remedy = say<"setting.rows_apart">()});
}

void check_record_low(const Site& site, const MonthlyNormals& normals) {
    const double coldest = *std::min_element(normals.temp_min_c.begin(), normals.temp_min_c.end());
    if (site.record_low_c <= coldest) return;
    throw InvalidInput(
        ErrorDetail{.part = "site",
                    .field = "record_low_c",
                    .value = format_number(site.record_low_c) + " °C",
                    .allowed = "<= the coldest temp_min_c = " + format_number(coldest) + " °C",
                    .remedy = say<"setting.minus_sign">()});
}

void check_monthly_normals(const MonthlyNormals& normals) {
    expect_twelve(normals.sun_hours, "weather", "sun_hours");
    expect_twelve(normals.temp_min_c, "weather", "temp_min_c");
    expect_twelve(normals.temp_max_c, "weather", "temp_max_c");
    for (std::size_t month = 0; month < 12; ++month) {
        if (normals.temp_min_c[month] <= normals.temp_max_c[month]) continue;
        throw InvalidInput(ErrorDetail{
            .part = "weather",
            .field = "temp_min_c[" + std::to_string(month) + ']',
            .value = format_number(normals.temp_min_c[month]) + " °C",
            .allowed = "<= temp_max_c = " + format_number(normals.temp_max_c[month]) + " °C",
            .remedy = base_sentences::say<"base.exchange">()});
    }
}

}  // namespace heatmatch
