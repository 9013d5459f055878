#include "group_objective.hpp"

#include <cmath>

namespace heatmatch {

GroupObjective::GroupObjective(const PanelInService& panel, const ScreenContext& context)
    : by_season_(context.season != nullptr) {
    if (context.season != nullptr) {
        const Panel& label = panel.panel;
        energy_ = EnergyCurve(panel.today, *label.noct_c, context.season->for_panel(panel).season,
                              *label.v_mp / *label.i_mp, context.options->vector_width);
        table_ = energy_.table();
        most_ = energy_.delivered_kwh(energy_.best_resistance_ohm()) * 1.0001;
    } else {
        for (const Condition& condition : context.options->conditions) {
            conditions_.push_back(
                panel.today.at(condition.irradiance_w_m2, condition.cell_temperature_c));
        }
    }
}

double GroupObjective::of(const Wiring& wiring, const BankNumbers& bank) const {
    const double total = bank.typical_ohm + wiring.wire_ohm;
    if (by_season_) {
        const double ln_each = wiring.ln_each(bank.typical_ohm, bank.ln_typical);
        return wiring.panels.count() * table_.at(ln_each) * (bank.typical_ohm / total);
    }
    const double each = total / wiring.panels.resistance_factor();
    double sum = 0.0;
    for (const DiodeCurve& curve : conditions_) {
        const double current = curve.into_resistance(each).current_a * wiring.panels.parallel;
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
