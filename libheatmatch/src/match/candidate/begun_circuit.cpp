#include "begun_circuit.hpp"

#include "clear_powers.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/limit_in_time.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

namespace {

/// The largest power of each element, also with unstated facts at their careful ends [W]; of equal
/// elements one number for all.
std::vector<double> careful_element_w(const BegunCircuit& begun) {
    const Site& site = begun.judged.site;
    const CarefulCase careful = careful_case(begun.circuit, site);
    const Extremes likely = bright_extremes(begun.circuit, site);
    const Extremes worse = bright_extremes(careful.circuit, careful.site);
    if (!begun.circuit.bank.unlike) {
        return {std::max(likely.element_power_w, worse.element_power_w)};
    }
    std::vector<double> element_w;
    for (std::size_t i = 0; i < likely.elements.size(); ++i) {
        element_w.push_back(std::max(likely.elements[i].power_w, worse.elements[i].power_w));
    }
    return element_w;
}

std::vector<OtherBank> banks_for_others(const BegunCircuit& begun) {
    const Circuit& circuit = begun.circuit;
    const bool limited = opening_limit(circuit, opening_site(begun.judged.site)) != nullptr;
    return other_banks(circuit.bank, begun.judged.circuit->name, careful_element_w(begun), limited);
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

/// The same for each element of its bank.
bool each_limited_in_time(const Circuit& circuit, const Site& site,
                          const std::vector<double>& element_w) {
    if (!circuit.bank.unlike) return limited_in_time(circuit, site, element_w.front());
    for (std::size_t i = 0; i < element_w.size(); ++i) {
        const Circuit seen = element_view(circuit, i, element_w);
        if (!limited_in_time(seen, site, element_w[i])) return false;
    }
    return true;
}

/// The same, also with unstated facts at their careful ends: other circuits rely on it.
bool surely_limited(const BegunCircuit& begun) {
    const Site& site = begun.judged.site;
    const std::vector<double> element_w = careful_element_w(begun);
    if (!each_limited_in_time(begun.circuit, site, element_w)) return false;
    const CarefulCase careful = careful_case(begun.circuit, site);
    return careful.facts.empty() || each_limited_in_time(careful.circuit, careful.site, element_w);
}

}  // namespace

void share_store(std::vector<BegunCircuit>& all, const Parts& parts) {
    std::vector<std::vector<OtherBank>> banks;
    std::optional<ClearPowers> clear;
    if (all.size() > 1) {
        for (BegunCircuit& begun : all) {
            begun.circuit.heat = nullptr;
            banks.push_back(banks_for_others(begun));
        }
        clear.emplace(all);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        Circuit& circuit = all[i].circuit;
        auto store = fill_store(parts, all[i].judged);
        if (store && all.size() > 1) {
            auto shared = std::make_shared<FilledStore>(*store);
            shared->days = clear->of(i);
            shared->assumed.insert(shared->assumed.end(), clear->assumed().begin(),
                                   clear->assumed().end());
            for (std::size_t k = 0; k < banks.size(); ++k) {
                if (k == i) {
                    shared->place = shared->others.size();
                    continue;
                }
                for (OtherBank other : banks[k]) {
                    if (!clear->same_planes(i, k)) other.days = clear->of(k);
                    shared->others.push_back(std::move(other));
                }
            }
            store = std::move(shared);
        }
        circuit.heat = bank_heat(std::move(store), circuit.bank);
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
        std::size_t circuits = 0;  // of the others so far, this one included
        for (OtherBank& other : store->others) {
            if (!other.goes_on) ++circuits;
            other.limited = limited[circuits <= i ? circuits - 1 : circuits];
        }
        heat->store = std::move(store);
        all[i].circuit.heat = std::move(heat);
    }
}

}  // namespace heatmatch
