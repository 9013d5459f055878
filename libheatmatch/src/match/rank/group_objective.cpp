#include "group_objective.hpp"

#include <cmath>

#include "heatmatch/solar/array.hpp"
#include "heatmatch/solar/panel_energy.hpp"

namespace heatmatch {

GroupObjective::GroupObjective(const PanelInService& panel, const ScreenContext& context,
                               std::size_t group)
    : by_season_(context.season != nullptr), panel_(panel) {
    if (context.season != nullptr) {
        nodes_ = &context.season_for(group)->for_panel(panel).season;
        PanelInService free = panel;
        free.blocking = false;  // a bound for every number in series
        energy_ = panel_energy(free, *nodes_, context.options->vector_width);
        table_ = energy_.table();
        most_ = energy_.delivered_kwh(energy_.best_resistance_ohm()) * 1.0001;
    } else {
        for (const Condition& condition : context.options->conditions) {
            conditions_.push_back(
                panel.today.at(condition.irradiance_w_m2, condition.cell_temperature_c));
        }
    }
}

CurveTable GroupObjective::blocked(int series) const {
    auto known = blocked_.find(series);
    if (known == blocked_.end()) {
        known =
            blocked_.emplace(series, panel_energy(panel_, *nodes_, VectorWidth::automatic, series))
                .first;
    }
    return known->second.table();
}

double GroupObjective::of(const Wiring& wiring, const BankNumbers& bank) const {
    const double total = bank.typical_ohm + wiring.wire_ohm;
    if (by_season_) {
        const double ln_each = wiring.ln_each(bank.typical_ohm, bank.ln_typical);
        const CurveTable table = panel_.blocking ? blocked(wiring.panels.series) : table_;
        return wiring.panels.count() * table.at(ln_each) * (bank.typical_ohm / total);
    }
    double sum = 0.0;
    for (const DiodeCurve& curve : conditions_) {
        const ArrayCurve array{.panel = curve,
                               .series = wiring.panels.series,
                               .parallel = wiring.panels.parallel,
                               .drop_v = panel_.blocking_v()};
        const double current = array.into_resistance(total).current_a;
        sum += current * current * bank.typical_ohm;
    }
    return sum / static_cast<double>(conditions_.size());
}

double GroupObjective::at_most(const Wiring& wiring, const BankNumbers& bank) const {
    if (!by_season_) return unknown_price;
    return wiring.panels.count() *
           table_.at_most(wiring.ln_each(bank.typical_ohm, bank.ln_typical));
}

}  // namespace heatmatch
