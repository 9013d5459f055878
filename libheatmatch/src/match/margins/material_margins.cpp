#include "heatmatch/match/margins/material_margins.hpp"

#include "said.hpp"
#include "sentences_of_vessels.hpp"
#include "store_view.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/parts/store_material.hpp"

namespace heatmatch {

using margins_sentences::of_vessels::say;

namespace {

struct Layer {
    const char* margin = "";
    const char* field = "";
    std::optional<StoreMaterial> Store::*material = nullptr;
    Sentence (*called)() = nullptr;
};

constexpr auto layers = std::to_array<Layer>({
    {"vessel material", "store.vessel", &Store::vessel, say<"material.vessel">},
    {"liner material", "store.liner", &Store::liner, say<"material.liner">},
    {"lagging material", "store.lagging", &Store::lagging, say<"material.lagging">},
});

// A bare wall loses at least 4 W/m2K, an ordinary one of brick or wood 1; from memory.
constexpr double lagged_below_u = 1.0;
constexpr double bare_from_u = 4.0;

Margin of_layer(const StoreView& view, const Layer& layer) {
    return {.name = layer.margin,
            .subject = view.store,
            .consequence = Severity::danger,
            .unit = unit::celsius,
            .source = "from-memory",
            .assumed = view.heat.assumed};
}

Margin untold(const StoreView& view, const Layer& layer, Sentence why, const char* missing) {
    Margin margin = of_layer(view, layer);
    if (view.point.stagnation_inner_c <= least_years_c()) margin.consequence = Severity::warning;
    margin.said = std::move(why);
    margin.missing = {missing};
    return margin;
}

/// There is no such layer; other stated facts have to agree with that.
Margin without_layer(const StoreView& view, const Layer& layer) {
    const Store& store = view.heat.store->store;
    if (layer.material == &Store::vessel && view.heat.liquid) {
        return untold(view, layer, say<"material.liquid_needs_vessel">(), layer.field);
    }
    const double side_u = store.side_u_w_m2k.value_or(bare_from_u);
    if (layer.material == &Store::lagging && side_u < lagged_below_u) {
        return untold(view, layer,
                      say<"material.something_lags">(with<"u">(side_u, unit::watt_per_m2_k)),
                      layer.field);
    }
    Margin margin = of_layer(view, layer);
    margin.severity = Severity::none;
    margin.said = say<"material.no_layer">(with<"layer">(layer.called()));
    return margin;
}

Margin layer_margin(const StoreView& view, const Layer& layer, bool limited) {
    const Store& store = view.heat.store->store;
    const std::optional<StoreMaterial>& material = store.*layer.material;
    if (!material) {
        return untold(
            view, layer,
            say<"material.not_told">(with<"layer">(layer.called()),
                                     with<"then">(view.point.stagnation_inner_c, unit::celsius)),
            layer.field);
    }
    const MaterialLimit* const limit = find_material_limit(*material);
    if (limit == nullptr) return without_layer(view, layer);
    Margin margin = of_layer(view, layer);
    margin.value = view.point.stagnation_inner_c;
    margin.value_low = view.point.inner_c;
    margin.limit = limit->years_c;
    margin.source = limit->source;
    margin.said = say<"material.reaches">(with<"layer">(layer.called()),
                                          with<"material">(shown_choice(*material)));
    grade(margin, room_c);
    if (limited && *margin.headroom < 0.0) {
        const double in_use = headroom_of(view.point.inner_c, limit->years_c, room_c);
        if (in_use >= 0.0) margin.severity = margin.consequence = Severity::warning;
        add(margin, say<"material.limit_has_to_stop">());
    }
    if (limit->fails_c) {
        add(margin, say<"material.fails">(with<"fails">(*limit->fails_c, unit::celsius)));
    }
    const bool lagged = store.lagging && *store.lagging != StoreMaterial::none;
    if (lagged && !store.side_u_w_m2k) {
        margin.severity = std::max(margin.severity, Severity::warning);
        margin.missing = {"store.side_u_w_m2k"};
        add(margin, say<"material.computed_bare">());
    }
    return margin;
}

}  // namespace

std::vector<Margin> material_margins(const Circuit& circuit, const std::optional<HeatPoint>& point,
                                     const OpeningSite& site) {
    std::vector<Margin> margins;
    if (!point) {
        for (const Layer& layer : layers) {
            const auto name = std::to_array<const char*>({layer.margin});
            margins.push_back(margins_without_heat(circuit, name, Of::store).front());
        }
        return margins;
    }
    const StoreView view(circuit, *point);
    const bool weak = passes_material(view.heat.store->store, point->stagnation_inner_c);
    const double element_w =
        100.0 * point->w_per_cm * view.heat.heated_length_m / view.heat.elements;
    const bool limited = weak && limit_counts(circuit, element_w, site);
    for (const Layer& layer : layers) margins.push_back(layer_margin(view, layer, limited));
    return margins;
}

bool passes_material(const Store& store, double inner_c) {
    return std::any_of(layers.begin(), layers.end(), [&](const Layer& layer) {
        const std::optional<StoreMaterial>& material = store.*layer.material;
        const MaterialLimit* const limit = material ? find_material_limit(*material) : nullptr;
        return limit != nullptr && inner_c > limit->years_c;
    });
}

}  // namespace heatmatch
