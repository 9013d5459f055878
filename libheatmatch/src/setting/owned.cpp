#include "heatmatch/setting/owned.hpp"

#include "sentences.hpp"

#include <algorithm>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

using setting_sentences::say;

std::span<const Field> panel_measurement_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&PanelMeasurement::v_oc>({.name = "v_oc",
                                       .kind = FieldKind::number,
                                       .unit = unit::volt,
                                       .range = {.low = 0.0, .high = 2000.0, .low_open = true},
                                       .meaning = "measured open-circuit voltage"}),
        bind<&PanelMeasurement::i_sc>({.name = "i_sc",
                                       .kind = FieldKind::number,
                                       .unit = unit::ampere,
                                       .range = {.low = 0.0, .high = 100.0, .low_open = true},
                                       .meaning = "measured short-circuit current"}),
        bind<&PanelMeasurement::irradiance_w_m2>(
            {.name = "irradiance_w_m2",
             .kind = FieldKind::number,
             .unit = unit::watt_per_m2,
             .range = {.low = 50.0, .high = 1600.0},
             .required = true,
             .meaning = "irradiance on the panel during the measurement"}),
        bind<&PanelMeasurement::cell_temperature_c>(
            {.name = "cell_temperature_c",
             .kind = FieldKind::number,
             .unit = unit::celsius,
             .range = {.low = -50.0, .high = 110.0},
             .required = true,
             .meaning = "cell temperature during the measurement: back of the panel plus 2 K"}),
    });
    return fields;
}

std::span<const Field> owned_panels_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&OwnedPanels::group>({.name = "group",
                                   .kind = FieldKind::text,
                                   .required = true,
                                   .meaning = "your name for these panels"}),
        bind<&OwnedPanels::panel>({.name = "panel",
                                   .kind = FieldKind::reference,
                                   .required = true,
                                   .meaning = "id of a panel",
                                   .refers_to = "panel"}),
        bind<&OwnedPanels::count>({.name = "count",
                                   .kind = FieldKind::count,
                                   .unit = unit::count,
                                   .range = {.low = 1, .high = 64},
                                   .meaning = "number of panels owned"}),
        bind<&OwnedPanels::age_years>({.name = "age_years",
                                       .kind = FieldKind::number,
                                       .unit = unit::year,
                                       .range = {.low = 0.0, .high = 60.0},
                                       .meaning = "time in the sun"}),
        bind<&OwnedPanels::rear_blocked>(
            {.name = "rear_blocked",
             .kind = FieldKind::flag,
             .meaning =
                 "a wall or a roof is behind them: no light reaches their backs; unstated counts"
                 " as open"}),
        bind<&OwnedPanels::tilt_deg>({.name = "tilt_deg",
                                      .kind = FieldKind::number,
                                      .unit = unit::degree,
                                      .range = {.low = 0.0, .high = 90.0},
                                      .meaning = "tilt of these panels, 0 flat, 90 upright; that "
                                                 "of the site if omitted"}),
        bind<&OwnedPanels::azimuth_deg>({.name = "azimuth_deg",
                                         .kind = FieldKind::number,
                                         .unit = unit::degree,
                                         .range = {.low = 0.0, .high = 360.0},
                                         .meaning = "direction these panels face, clockwise from "
                                                    "north; that of the site if omitted"}),
        bind<&OwnedPanels::shade_pct>(
            {.name = "shade_pct",
             .kind = FieldKind::numbers,
             .unit = unit::percent,
             .range = {.low = 0.0, .high = 100.0},
             .meaning = "share of their irradiance lost to shade: one number, 12 by month, or 12 "
                        "lists of 24 by month and hour of mean solar time; none if omitted"}),
        bind<&OwnedPanels::shaded_substrings>(
            {.name = "shaded_substrings",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 1, .high = 400},
             .meaning = "substrings of each panel in that shade; all of them if omitted"}),
        bind<&OwnedPanels::bypass_diodes>(
            {.name = "bypass_diodes",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 0, .high = 400},
             .meaning = "bypass diodes of each panel as owned, one a substring; those of its kind "
                        "if omitted"}),
        bind<&OwnedPanels::blocking>(
            {.name = "blocking",
             .kind = FieldKind::flag,
             .meaning = "each string has a blocking diode, whose 0.5 V are lost; no margin relies "
                        "on it; none if omitted"}),
        bind<&OwnedPanels::notes>(
            {.name = "notes", .kind = FieldKind::text, .meaning = "notes in your own words"}),
    });
    return fields;
}

std::span<const Field> element_filter_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&ElementFilter::family>({.name = "family",
                                      .kind = FieldKind::texts,
                                      .meaning = "families to choose from; all if omitted"}),
        bind<&ElementFilter::price_max>({.name = "price_max",
                                         .kind = FieldKind::number,
                                         .unit = unit::money,
                                         .range = {.low = 0.0, .high = 1e6},
                                         .meaning = "highest typical price each"}),
        bind<&ElementFilter::rated_v_min>({.name = "rated_v_min",
                                           .kind = FieldKind::number,
                                           .unit = unit::volt,
                                           .range = {.low = 0.0, .high = 1000.0},
                                           .meaning = "lowest rated voltage"}),
        bind<&ElementFilter::rated_w_max>({.name = "rated_w_max",
                                           .kind = FieldKind::number,
                                           .unit = unit::watt,
                                           .range = {.low = 0.0, .high = 50000.0},
                                           .meaning = "highest rated power"}),
    });
    return fields;
}

std::span<const Field> allowed_elements_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&AllowedElements::element>({.name = "element",
                                         .kind = FieldKind::reference,
                                         .meaning = "id of an element you own",
                                         .refers_to = "element"}),
        bind<&AllowedElements::count>({.name = "count",
                                       .kind = FieldKind::count,
                                       .unit = unit::count,
                                       .range = {.low = 1, .high = 64},
                                       .meaning = "maximum number of one kind in a bank"}),
    });
    return fields;
}

namespace {

void check_shade(const OwnedPanels& owned, const std::string& part) {
    const auto& shade = owned.shade_pct;
    const std::size_t count = shade.size();
    if (owned.shaded_substrings && count == 0) {
        throw InvalidInput(ErrorDetail{.part = part,
                                       .field = "shade_pct",
                                       .value = "(missing)",
                                       .allowed = "given where `shaded_substrings` is",
                                       .remedy = say<"setting.light_lost">()});
    }
    if (owned.shaded_substrings && owned.bypass_diodes &&
        *owned.shaded_substrings > std::max(1, *owned.bypass_diodes)) {
        throw InvalidInput(
            ErrorDetail{.part = part,
                        .field = "shaded_substrings",
                        .value = std::to_string(*owned.shaded_substrings),
                        .allowed = "at most " + std::to_string(std::max(1, *owned.bypass_diodes)) +
                                   ", one for each bypass diode",
                        .remedy = say<"setting.omit_for_all">()});
    }
    const bool fits = count <= 1 || count == 12 || count == shades_by_hour;
    const auto remedy = [] {
        return say<"setting.shade_table">(with<"months">(12.0), with<"hours">(24.0));
    };
    if (!fits) {
        throw InvalidInput(ErrorDetail{.part = part,
                                       .field = "shade_pct",
                                       .value = std::to_string(count) + " numbers",
                                       .allowed = "1, 12 or 12 times 24 numbers",
                                       .remedy = remedy()});
    }
    if (count == 0 || std::any_of(shade.begin(), shade.end(),
                                  [](double share_pct) { return share_pct < 100.0; })) {
        return;
    }
    throw InvalidInput(ErrorDetail{.part = part,
                                   .field = "shade_pct",
                                   .value = "100 % all the time",
                                   .allowed = "below 100 % at some time",
                                   .remedy = say<"setting.always_shaded">()});
}

}  // namespace

void check_owned_panels(const OwnedPanels& owned, const std::string& part) {
    check_record(owned_panels_fields(), &owned, part);
    check_shade(owned, part);
    if (!owned.measured) return;
    check_record(panel_measurement_fields(), &*owned.measured, part + " measured");
    if (owned.measured->v_oc || owned.measured->i_sc) return;
    throw InvalidInput(ErrorDetail{.part = part + " measured",
                                   .field = "v_oc, i_sc",
                                   .value = "(missing)",
                                   .allowed = "given, at least one of them",
                                   .remedy = say<"setting.say_what_was_read">()});
}

void check_allowed_elements(const AllowedElements& allowed, const std::string& part) {
    check_record(allowed_elements_fields(), &allowed, part);
    if (allowed.any) check_record(element_filter_fields(), &*allowed.any, part + " any");
    if (allowed.any.has_value() == allowed.element.empty()) return;
    throw InvalidInput(ErrorDetail{.part = part,
                                   .field = "element",
                                   .value = allowed.any ? "given together with `any`" : "(missing)",
                                   .allowed = "given, or `any` instead",
                                   .remedy = say<"setting.write_either">(
                                       with<"one">(R"({"element": "id"})"),
                                       with<"other">(R"({"any": {"family": ["oven lower"]}})"))});
}

}  // namespace heatmatch
