#include "heatmatch/match/margins/store_margins.hpp"

#include "store_view.hpp"

#include <algorithm>
#include <array>

namespace heatmatch {

namespace {

constexpr double wood_limit_c = 77.0;
constexpr double wood_rise_k = 50.0;
constexpr double wood_clearance_mm = 900.0;
constexpr double touch_limit_c = 65.0;
constexpr double dry_out_w_per_m = 100.0;
constexpr double boiling_c = 100.0;

constexpr auto names =
    std::to_array<const char*>({"store ceiling", "wall and lid", "touch temperature", "dry-out"});

Margin ceiling_margin(const StoreView& view) {
    const Medium& medium = view.heat.store->medium;
    if (view.heat.liquid) {
        const bool vented = view.heat.store->store.vented.value_or(false);
        Margin margin =
            heat_margin(view, "store ceiling", vented ? Severity::warning : Severity::danger,
                        view.point.boils ? boiling_c : view.point.bed_mean_c, boiling_c,
                        "The water reaches {value}; it boils at {limit}.", "common-practice");
        if (view.point.boils) {
            margin.said = vented
                              ? "After some bright days the water boils ({limit}): the vent lets "
                                "steam out, and water has to be made up before the element is dry."
                              : "After some bright days the water boils ({limit}), and no vent or "
                                "relief is told: a closed vessel bursts.";
            margin.headroom = -1.0;
            margin.severity = margin.consequence;
            return margin;
        }
        grade(margin, room_c);
        return margin;
    }
    Margin margin = heat_margin(
        view, "store ceiling", Severity::warning, view.point.sheath_band.high_c, medium.ceiling_c,
        "At the sheath the fill reaches {value}; " + medium.label + " should stay below {limit}.",
        medium.provenance.source);
    if (!medium.ceiling_c) {
        margin.said = "At the sheath the fill reaches {value}; what it stands is not known.";
        margin.missing = {"ceiling_c"};
    }
    grade(margin, room_c);
    return margin;
}

Margin wood_margin(const StoreView& view) {
    const auto& distance = view.heat.store->store.combustible_distance_mm;
    const double hottest_c = std::max(view.point.wall_c, view.point.lid_c);
    const double limit_c = std::min(wood_limit_c, view.heat.store->air_c + wood_rise_k);
    const bool clear = distance.value_or(0.0) >= wood_clearance_mm;
    Margin margin = heat_margin(
        view, "wall and lid", distance ? Severity::danger : Severity::warning, hottest_c, limit_c,
        "The hottest spot of wall and lid reaches {value}; wood and board near it char over years "
        "above {limit}: none of it within 0.9 m (3 ft), none on the lid.",
        "babrauskas-2007");
    if (clear) {
        margin.said =
            "The hottest spot of wall and lid reaches {value}; what burns is 0.9 m (3 ft) away.";
        margin.severity = Severity::none;
        margin.limit.reset();
        return margin;
    }
    if (!distance) margin.said += " How far it is was not told.";
    // In deep cold the limit lies below a room: the air is at rest then.
    grade(margin, std::min(room_c, view.heat.store->air_c));
    return margin;
}

Margin touch_margin(const StoreView& view) {
    Margin margin = heat_margin(
        view, "touch temperature", Severity::warning, std::max(view.point.wall_c, view.point.lid_c),
        touch_limit_c,
        "The hottest spot of wall and lid reaches {value}; bare metal burns a hand within a "
        "second above {limit}, and far below that within a minute: guard it.",
        "iso-13732-1");
    grade(margin, room_c);
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
        margin.said = "Nothing in this fill that moisture would change.";
        return margin;
    }
    if (!store.store.moist) {
        margin.severity = Severity::not_assessed;
        margin.said =
            "Whether the fill is damp is not told: damp sand conducts several times better until "
            "it has dried around the rod, and its steam needs a way out.";
        margin.missing = {"store.moist"};
        return margin;
    }
    if (!*store.store.moist) {
        margin.said = "The fill was put in dry, and is judged as dry.";
        return margin;
    }
    const double w_per_m = 100.0 * view.point.w_per_cm;
    constexpr double metres_per_foot = 0.3048;
    margin.unit = unit::celsius;
    margin.value_low = view.point.moist_sheath_c;
    margin.value_high = view.point.sheath_band.typical_c;
    margin.headroom = (dry_out_w_per_m - w_per_m) / dry_out_w_per_m;
    const std::string both = " Damp, the sheath is at {low}; dry, at {high}: dry counts here.";
    const std::string load = format_number(w_per_m, 3) + " W a metre of rod (" +
                             format_number(w_per_m * metres_per_foot, 3) + " W/ft)";
    if (*margin.headroom < 0.0) {
        margin.severity = Severity::warning;
        margin.said = load + " dries the damp fill around it (100 W/m or 30 W/ft is enough): " +
                      "steam, so dry it slowly and vented, never sealed." + both;
    } else {
        margin.said = load + " may leave the fill damp (100 W/m or 30 W/ft dries it)." + both;
    }
    return margin;
}

}  // namespace

std::vector<Margin> store_margins(const Circuit& circuit, const std::optional<HeatPoint>& point) {
    if (!point) return margins_without_heat(circuit, names);
    const StoreView view(circuit, *point);
    return {ceiling_margin(view), wood_margin(view), touch_margin(view), dry_out_margin(view)};
}

}  // namespace heatmatch
