#include "heatmatch/match/margins/floor_margin.hpp"

#include "said.hpp"
#include "sentences_of_vessels.hpp"
#include "store_view.hpp"

#include <algorithm>

#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/parts/store_material.hpp"

namespace heatmatch {

using margins_sentences::of_vessels::say;

double wood_limit_c(const FilledStore& store) {
    constexpr double chars_c = 77.0;
    constexpr double rise_k = 50.0;
    return std::min(chars_c, std::max(store.air_c, room_c) + rise_k);
}

bool may_char_below(const Store& store) {
    return store.stands_on != StandsOn::concrete && store.stands_on != StandsOn::soil;
}

namespace {

/// Burn and touch of the bottom of the vessel after a stagnation.
void judge_bottom(Margin& margin, const Store& store, double bottom_c) {
    constexpr double burns_c = 65.0;  // as in the touch margin
    const auto bottom = with<"bottom">(bottom_c, unit::celsius);
    const bool reached = store.stands_on.value_or(StandsOn::metal_legs) == StandsOn::metal_legs;
    if (reached && bottom_c > burns_c) {
        margin.severity = std::max(margin.severity, Severity::caution);
        add(margin, say<"floor.touch">(bottom, with<"burns">(burns_c, unit::celsius)));
    }
    if (!store.vessel) {
        const double least_c = least_years_c();
        if (bottom_c <= least_c) return;
        margin.severity = std::max(margin.severity, Severity::warning);
        margin.missing.emplace_back("store.vessel");
        add(margin, say<"floor.vessel_unknown">(bottom, with<"least">(least_c, unit::celsius)));
        return;
    }
    const MaterialLimit* const limit = find_material_limit(*store.vessel);
    if (limit == nullptr || bottom_c <= limit->years_c) return;
    margin.severity = std::max(margin.severity, Severity::warning);
    add(margin, say<"floor.vessel">(bottom, with<"material">(shown_choice(*store.vessel)),
                                    with<"stands">(limit->years_c, unit::celsius)));
}

}  // namespace

Margin floor_margin(const Circuit& circuit, const HeatPoint& point) {
    const StoreView view(circuit, point);
    const FilledStore& filled = *view.heat.store;
    const std::optional<StandsOn>& on = filled.store.stands_on;
    Margin margin =
        heat_margin(view, "floor", on ? Severity::danger : Severity::warning, point.floor_c,
                    wood_limit_c(filled), say<"floor.not_told">(), "babrauskas-2007");
    margin.value_high = point.stagnation_floor_c;
    if (!may_char_below(filled.store)) {
        margin.said = say<"floor.does_not_char">(with<"below">(shown_choice(*on)));
        margin.severity = Severity::none;
        margin.limit.reset();
        judge_bottom(margin, filled.store, point.stagnation_bottom_c);
        return margin;
    }
    if (!on) {
        margin.missing = {"store.stands_on"};
    } else {
        margin.said = *on == StandsOn::wood ? say<"floor.wood">() : say<"floor.legs">();
    }
    grade(margin, std::min(room_c, filled.air_c));
    if (point.stagnation_floor_c > *margin.limit) {
        margin.severity = std::max(margin.severity, Severity::warning);
        add(margin, say<"floor.stagnant">());
    }
    judge_bottom(margin, filled.store, point.stagnation_bottom_c);
    return margin;
}

}  // namespace heatmatch
