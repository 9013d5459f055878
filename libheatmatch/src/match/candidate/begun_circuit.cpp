#include "begun_circuit.hpp"

#include <algorithm>
#include <memory>
#include <utility>

#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/limit_in_time.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

namespace {

/// The largest power of one element, also with unstated facts at their careful ends [W].
double careful_element_w(const BegunCircuit& begun) {
    const Site& site = begun.judged.site;
    const CarefulCase careful = careful_case(begun.circuit, site);
    return std::max(bright_extremes(begun.circuit, site).element_power_w,
                    bright_extremes(careful.circuit, careful.site).element_power_w);
}

OtherBank other_bank(const BegunCircuit& begun) {
    const Circuit& circuit = begun.circuit;
    return {.circuit = begun.judged.circuit->name,
            .element = circuit.bank.element,
            .elements = circuit.bank.hookup.count(),
            .element_w = careful_element_w(begun),
            .limited = opening_limit(circuit, opening_site(begun.judged.site)) != nullptr};
}

/// Whether a limit of a circuit opens it before a part of the store exceeds its limit, or none is
/// called for.
bool limited_in_time(const Circuit& circuit, const Site& site, double element_w) {
    if (!circuit.heat || !circuit.heat->known()) return false;
    return std::any_of(
        circuit.devices.begin(), circuit.devices.end(), [&](const PlacedDevice& placed) {
            if (!is_limit(placed) ||
                opens(circuit, placed, Occasion::limit, opening_site(site)).answer != Answer::yes) {
                return false;
            }
            const LimitInTime found = limit_in_time(circuit, placed, element_w);
            return found.acts == Answer::yes || !found.called_for;
        });
}

/// The same, also with unstated facts at their careful ends: other circuits rely on it.
bool surely_limited(const BegunCircuit& begun) {
    const Site& site = begun.judged.site;
    const double element_w = careful_element_w(begun);
    if (!limited_in_time(begun.circuit, site, element_w)) return false;
    const CarefulCase careful = careful_case(begun.circuit, site);
    return careful.facts.empty() || limited_in_time(careful.circuit, careful.site, element_w);
}

}  // namespace

void share_store(std::vector<BegunCircuit>& all, const Parts& parts) {
    std::vector<OtherBank> banks;
    if (all.size() > 1) {
        for (BegunCircuit& begun : all) {
            begun.circuit.heat = nullptr;
            banks.push_back(other_bank(begun));
        }
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        Circuit& circuit = all[i].circuit;
        auto store = fill_store(parts, all[i].judged);
        if (store && all.size() > 1) {
            auto shared = std::make_shared<FilledStore>(*store);
            shared->others = banks;
            shared->others.erase(shared->others.begin() + static_cast<std::ptrdiff_t>(i));
            shared->place = i;
            store = std::move(shared);
        }
        circuit.heat = bank_heat(std::move(store), circuit.bank.element, circuit.bank.sheath,
                                 circuit.bank.alloy, circuit.bank.hookup.count());
    }
}

void count_limits(std::vector<BegunCircuit>& all) {
    if (all.size() < 2) return;
    std::vector<bool> limited;
    limited.reserve(all.size());
    for (const BegunCircuit& begun : all) limited.push_back(surely_limited(begun));
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!all[i].circuit.heat || !all[i].circuit.heat->store) continue;
        auto heat = std::make_shared<BankHeat>(*all[i].circuit.heat);
        auto store = std::make_shared<FilledStore>(*heat->store);
        for (std::size_t k = 0; k < store->others.size(); ++k) {
            store->others[k].limited = limited[k < i ? k : k + 1];
        }
        heat->store = std::move(store);
        all[i].circuit.heat = std::move(heat);
    }
}

}  // namespace heatmatch
