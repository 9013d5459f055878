#include "screen_wiring.hpp"

#include "match/margins/screen_heat.hpp"

#include <cmath>

#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/margins/array_margins.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/device_margins.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

namespace heatmatch {

namespace {

Wiring bare_wiring(const PanelInService& panel, Hookup panels) {
    Wiring wiring{{.panels = panels, .ln_factor = std::log(panels.resistance_factor())}};
    wiring.cold_voltage_v = panel.cold.v_oc * panels.series;
    return wiring;
}

}  // namespace

Wiring plain_wiring(const PanelInService& panel, Hookup panels) {
    Wiring wiring = bare_wiring(panel, panels);
    const ArrayScreened array = screen_array(panel, panels);
    wiring.screened = array.screened;
    wiring.not_assessed = array.not_assessed;
    wiring.doubtful = array.doubtful;
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
    const std::vector<Margin> margins = judged(circuit, installation.site, of_wiring);
    wiring.doubtful = may_be_danger(margins);
    wiring.screened = screen_margins(margins);
    wiring.not_assessed = count_not_assessed(margins);
    wiring.wire_ohm = circuit.wire_ohm();
    if (!installation.store) {
        wiring.terminal_c = terminal_temperature_c(circuit, installation.site);
    }
    Circuit only_runs = circuit;
    only_runs.bank.owned = circuit.bank.hookup.count();
    wiring.run_price = price_to_buy(only_runs).value_or(unknown_price);
    return wiring;
}

Wiring wiring_before_element(Circuit circuit, const Installation& installation) {
    if (const RunParts* last = circuit.run_at_element()) {
        circuit.runs.erase(circuit.runs.begin() + (last - circuit.runs.data()));
    }
    return wiring_of(circuit, installation);
}

}  // namespace heatmatch
