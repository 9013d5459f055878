#include "heatmatch/match/margins/pressure_margin.hpp"

#include "sentences_of_vessels.hpp"
#include "store_view.hpp"

#include <algorithm>
#include <array>

namespace heatmatch {

using margins_sentences::of_vessels::say;

Margin pressure_margin(const Circuit& circuit, const std::optional<HeatPoint>& point) {
    constexpr auto name = std::to_array<const char*>({"pressure"});
    if (!point) return margins_without_heat(circuit, name, Of::store).front();
    constexpr double bursts_from_c = 90.0;
    const StoreView view(circuit, *point);
    const Store& store = view.heat.store->store;
    // Water has one temperature, whatever the lagging of its wall. Moisture next to a sheath boils.
    const double hottest_c = view.heat.liquid
                                 ? point->stagnation_inner_c
                                 : std::max(point->stagnation_sheath_c, point->sheath_c);
    Margin margin = heat_margin(view, name.front(), Severity::danger, hottest_c, bursts_from_c,
                                say<"pressure.dry">(), "common-practice");
    const bool wet = view.heat.liquid || store.moist.value_or(false);
    if (!wet) {
        margin.value.reset();
        margin.limit.reset();
        margin.severity = Severity::none;
        if (!store.moist) margin.missing = {"store.moist"};
        return margin;
    }
    if (!store.vented) {
        margin.severity = Severity::warning;
        margin.missing = {"store.vented"};
        margin.said = say<"pressure.not_told">();
        return margin;
    }
    if (*store.vented) {
        margin.severity = hottest_c > bursts_from_c ? Severity::caution : Severity::none;
        margin.said = say<"pressure.vented">();
        return margin;
    }
    grade(margin, room_c);
    const bool bursts = *margin.headroom < 0.0;
    if (!bursts) margin.severity = Severity::warning;
    margin.said = bursts ? say<"pressure.closed_hot">() : say<"pressure.closed">();
    return margin;
}

}  // namespace heatmatch
