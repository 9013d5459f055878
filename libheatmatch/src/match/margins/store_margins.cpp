#include "heatmatch/match/margins/store_margins.hpp"

#include "said.hpp"
#include "sentences_of_stores.hpp"
#include "store_view.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/match/margins/covered_margin.hpp"
#include "heatmatch/match/margins/floor_margin.hpp"
#include "heatmatch/match/margins/material_margins.hpp"
#include "heatmatch/match/margins/pressure_margin.hpp"

namespace heatmatch {

using margins_sentences::of_stores::say;

namespace {

constexpr double wood_clearance_mm = 900.0;
// Burn thresholds of bare metal for one second, one minute and ten minutes, from memory. Below them
// no burn is expected; they are not permitted limits. @cite iso-13732-1
constexpr double touch_second_c = 65.0;
constexpr double touch_minute_c = 51.0;
constexpr double touch_ten_minutes_c = 48.0;
constexpr double dry_out_w_per_m = 100.0;
constexpr double boiling_c = 100.0;

constexpr auto store_names = std::to_array<const char*>(
    {"store ceiling", "wall and lid", "touch temperature", "dry-out", "floor"});

Margin ceiling_margin(const StoreView& view) {
    const Medium& medium = view.heat.store->medium;
    if (view.heat.liquid) {
        const bool vented = view.heat.store->store.vented.value_or(false);
        Margin margin =
            heat_margin(view, "store ceiling", vented ? Severity::warning : Severity::danger,
                        view.point.boils ? boiling_c : view.point.bed_mean_c, boiling_c,
                        say<"store.water">(), "common-practice");
        if (view.point.boils) {
            margin.said =
                vented ? say<"store.water_boils_vented">() : say<"store.water_boils_closed">();
            margin.headroom = -1.0;
            margin.severity = margin.consequence;
            if (!view.heat.store->store.vented) margin.missing = {"store.vented"};
            return margin;
        }
        if (!view.heat.store->store.vented) margin.missing = {"store.vented"};
        grade(margin, room_c);
        return margin;
    }
    Margin margin = heat_margin(
        view, "store ceiling", Severity::warning, view.point.sheath_band.high_c, medium.ceiling_c,
        say<"store.ceiling">(with<"fill">(medium.label)), medium.provenance.source);
    if (!medium.ceiling_c) {
        margin.said = say<"store.ceiling_unknown">();
        margin.missing = {"ceiling_c"};
    }
    grade(margin, room_c);
    return margin;
}

Margin wood_margin(const StoreView& view) {
    const auto& distance = view.heat.store->store.combustible_distance_mm;
    const double hottest_c = std::max(view.point.wall_c, view.point.lid_c);
    const double limit_c = wood_limit_c(*view.heat.store);
    const bool clear = distance.value_or(0.0) >= wood_clearance_mm;
    const Amount clearance{wood_clearance_mm / 1000.0, unit::metre, 1};
    Margin margin = heat_margin(view, "wall and lid",
                                distance ? Severity::danger : Severity::warning, hottest_c, limit_c,
                                say<"store.wood">(with<"clearance">(clearance)), "babrauskas-2007");
    if (clear) {
        margin.said = say<"store.wood_is_away">(with<"clearance">(clearance));
        margin.severity = Severity::none;
        margin.limit.reset();
        return margin;
    }
    const bool near = hottest_c > wood_near_c && hottest_c <= limit_c;
    if (near) {
        margin.said = say<"store.wood_near">(with<"near">(wood_near_c, unit::celsius),
                                             with<"clearance">(clearance));
    }
    if (!distance) {
        margin.missing = {"store.combustible_distance_mm"};
        add(margin, say<"store.wood_not_told">());
    }
    grade(margin, std::min(room_c, view.heat.store->air_c));
    if (near) margin.severity = Severity::caution;
    const double later_c = std::max(view.point.stagnation_wall_c, view.point.stagnation_lid_c);
    if (later_c > limit_c) {
        margin.severity = std::max(margin.severity, Severity::warning);
        add(margin, say<"store.wood_stagnant">(with<"then">(later_c, unit::celsius)));
    }
    return margin;
}

Margin touch_margin(const StoreView& view) {
    Margin margin = heat_margin(view, "touch temperature", Severity::warning,
                                std::max(view.point.wall_c, view.point.lid_c), touch_second_c,
                                say<"store.touch">(with<"minute">(touch_minute_c, unit::celsius),
                                                   with<"ten">(touch_ten_minutes_c, unit::celsius)),
                                "iso-13732-1");
    grade(margin, room_c);
    const double later_c = std::max(view.point.stagnation_wall_c, view.point.stagnation_lid_c);
    if (later_c > touch_second_c && later_c > *margin.value) {
        margin.severity = std::max(margin.severity, Severity::caution);
        add(margin, say<"store.touch_stagnant">(with<"then">(later_c, unit::celsius)));
    }
    return margin;
}

Margin dry_out_margin(const StoreView& view) {
    const FilledStore& store = *view.heat.store;
    Margin margin{.name = "dry-out",
                  .subject = view.store,
                  .severity = Severity::none,
                  .consequence = Severity::warning,
                  .source = "soil-dry-out-curve",
                  .assumed = view.heat.assumed};
    if (view.heat.liquid || !store.medium.moist_k_w_mk) {
        margin.said = view.heat.liquid ? say<"store.liquid_is_wet">() : say<"store.no_moisture">();
        return margin;
    }
    if (!store.store.moist) {
        margin.severity = Severity::not_assessed;
        margin.said = say<"store.damp_not_told">();
        margin.missing = {"store.moist"};
        return margin;
    }
    if (!*store.store.moist) {
        margin.said = say<"store.dry">();
        return margin;
    }
    double w_per_m = 100.0 * view.point.w_per_cm;
    for (const HeatedLegs& other : view.heat.careful.others) {
        w_per_m = std::max(w_per_m, other.w_per_m());
    }
    margin.unit = unit::celsius;
    margin.value_low = view.point.moist_sheath_c;
    margin.value_high = view.point.sheath_band.typical_c;
    margin.headroom = (dry_out_w_per_m - w_per_m) / dry_out_w_per_m;
    const Amount load{w_per_m, unit::watt_per_m};
    const Amount enough{dry_out_w_per_m, unit::watt_per_m, 1};
    if (*margin.headroom < 0.0) {
        margin.severity = Severity::warning;
        margin.said = say<"store.dries_out">(with<"load">(load), with<"enough">(enough));
    } else {
        margin.said = say<"store.may_stay_damp">(with<"load">(load), with<"enough">(enough));
    }
    const double element_w = w_per_m * view.heat.heated_length_m / view.heat.elements;
    add(margin,
        view.heat.damp_at(element_w) ? say<"store.kept_damp">() : say<"store.damp_and_dry">());
    return margin;
}

}  // namespace

std::vector<Margin> store_margins(const Circuit& circuit, const std::optional<HeatPoint>& point,
                                  const OpeningSite& site) {
    std::vector<Margin> margins;
    if (point) {
        const StoreView view(circuit, *point);
        margins = {ceiling_margin(view), wood_margin(view), touch_margin(view),
                   dry_out_margin(view), floor_margin(circuit, *point)};
    } else {
        margins = margins_without_heat(circuit, store_names, Of::store);
    }
    margins.push_back(pressure_margin(circuit, point));
    for (Margin& margin : material_margins(circuit, point, site))
        margins.push_back(std::move(margin));
    margins.push_back(covered_margin(circuit));
    return margins;
}

}  // namespace heatmatch
