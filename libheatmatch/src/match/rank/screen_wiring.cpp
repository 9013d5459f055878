#include "screen_wiring.hpp"

#include "match/margins/screen_heat.hpp"

#include <cmath>
#include <memory>
#include <utility>

#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/margins/array_margins.hpp"
#include "heatmatch/match/margins/bonding_margin.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/device_margins.hpp"
#include "heatmatch/match/margins/run_margins.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"
#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

namespace {

Wiring bare_wiring(const PanelInService& panel, Hookup panels) {
    Wiring wiring{{.panels = panels, .ln_factor = std::log(panels.resistance_factor())}};
    wiring.cold_voltage_v = panel.cold.v_oc * panels.series;
    return wiring;
}

/// The store without elements, for the margins that need no more.
std::shared_ptr<const BankHeat> store_alone(const Installation& installation) {
    if (!installation.store) return nullptr;
    auto filled = std::make_shared<FilledStore>();
    filled->store = *installation.store;
    // The temperature of its air does not matter here.
    filled->store.air_c = filled->air_c;
    filled->store.charge_hours = filled->charge_hours;
    auto alone = std::make_shared<BankHeat>();
    alone->missing = {"an element"};
    alone->store = std::move(filled);
    return alone;
}

}  // namespace

Wiring plain_wiring(const PanelInService& panel, Hookup panels, const Installation& installation) {
    Wiring wiring = bare_wiring(panel, panels);
    const ArrayScreened array = screen_array(panel, panels, installation.site);
    wiring.screened = array.screened;
    wiring.not_assessed = array.not_assessed;
    wiring.doubtful = array.doubtful;
    wiring.settled = panel.panel.max_system_voltage_v.has_value();
    const Store* store = installation.store ? &*installation.store : nullptr;
    if (wiring.cold_voltage_v > touch_limit_v(installation.site)) {
        const BondingGaps gaps = bonding_gaps(installation.site, store);
        if (!gaps.open.empty() && wiring.screened.headroom > -1.0) {
            wiring.screened = {.headroom = -1.0, .reason = "bonding"};
        }
        wiring.doubtful |= !gaps.not_told.empty();
    }
    return wiring;
}

Wiring wiring_of(const Circuit& circuit, const Installation& installation) {
    Wiring wiring = bare_wiring(circuit.panel, circuit.panels);
    const auto of_wiring = [](const Circuit& as, const Site& at) {
        std::vector<Margin> all = array_margins(as, at);
        for (auto&& more : {run_margins(as, at), device_margins(as, at)}) {
            all.insert(all.end(), more.begin(), more.end());
        }
        return all;
    };
    Circuit in_store = circuit;
    if (!in_store.heat) in_store.heat = store_alone(installation);
    const std::vector<Margin> margins = judged(in_store, installation.site, of_wiring);
    wiring.doubtful = may_be_danger(margins);
    wiring.screened = screen_margins(margins);
    wiring.not_assessed = count_not_assessed(margins);
    wiring.settled = all_decided(margins);
    wiring.wire_ohm = circuit.wire_ohm();
    wiring.cold_wire_ohm = circuit.wire_ohm_at(coldest_wire_c(installation.site));
    if (!installation.store) {
        wiring.terminal_c = terminal_temperature_c(circuit, installation.site);
    }
    const Bill runs = make_bill(run_items(circuit), installation.goals);
    wiring.run_price = runs.typical().value_or(unknown_price);
    return wiring;
}

Wiring wiring_before_element(Circuit circuit, const Installation& installation) {
    if (const RunParts* last = circuit.run_at_element()) {
        circuit.runs.erase(circuit.runs.begin() + (last - circuit.runs.data()));
    }
    return wiring_of(circuit, installation);
}

}  // namespace heatmatch
