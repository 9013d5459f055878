#include "unstated_back.hpp"

#include "match/margins/screen_heat.hpp"
#include "screen_wiring.hpp"

#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch {

UnstatedBack::UnstatedBack(const PanelInService& panel, const ScreenContext& context)
    : context_(&context) {
    if (!panel.panel.bifaciality) careful_ = panel.at_careful_end();
}

bool UnstatedBack::may_be_danger(const Wiring& wiring, const BankNumbers& numbers,
                                 const Circuit* circuit) const {
    if (!careful_) return false;
    const Site& site = context_->installation->site;
    const Bank& bank = context_->banks[numbers.bank];
    const Extremes most =
        extremes(bright_curve(*careful_, wiring.panels, site), bank, wiring.cold_wire_ohm);
    if (most.element_power_w > numbers.careful_w ||
        most.survivor_power_w > numbers.careful_survivor_w) {
        return true;
    }
    const BankLimits limits = bank_limits(bank, context_->heats[numbers.bank].get());
    if (screen_bank(most, limits, wiring.cold_voltage_v, wiring.terminal_c).headroom < 0.0) {
        return true;
    }
    if (const auto& left = context_->survivors[numbers.bank]) {
        const auto of_left = survivor_headroom(*left, most.survivor_power_w);
        if (of_left && *of_left < 0.0) return true;
    }
    return circuit != nullptr && screen_heat(*circuit, site, most).screened.headroom < 0.0;
}

}  // namespace heatmatch
