#include "pairings.hpp"

#include <algorithm>
#include <limits>

#include "heatmatch/match/array_margins.hpp"
#include "heatmatch/match/bank_margins.hpp"
#include "heatmatch/match/device_margins.hpp"
#include "heatmatch/match/run_margins.hpp"
#include "heatmatch/match/store_margins.hpp"
#include "heatmatch/match/wiring.hpp"

namespace heatmatch {

namespace {

constexpr double unknown_price = std::numeric_limits<double>::infinity();

bool passes(const Element& element, const ElementFilter& filter) {
    const auto typical = element.price.typical();
    if (filter.price_max && (!typical || *typical > *filter.price_max)) return false;
    if (filter.rated_v_min && element.rated_v.value_or(0.0) < *filter.rated_v_min) return false;
    if (filter.rated_w_max && element.rated_w.value_or(unknown_price) > *filter.rated_w_max) {
        return false;
    }
    const auto& families = filter.family;
    return families.empty() ||
           std::find(families.begin(), families.end(), element.family) != families.end();
}

/// Owned elements and those that may be bought, each once.
std::vector<AllowedElement> allowed_elements(const Parts& parts, const Installation& installation) {
    std::vector<AllowedElement> allowed;
    const auto add = [&allowed](const Element& element, int owned, int count) {
        const auto known = std::find_if(allowed.begin(), allowed.end(), [&](const auto& entry) {
            return entry.element->id == element.id;
        });
        if (known == allowed.end()) {
            allowed.push_back({.element = &element, .owned = owned, .most = count});
        } else {
            known->owned += owned;
            known->most += count;
        }
    };
    for (const AllowedElements& entry : installation.elements) {
        if (!entry.any) {
            add(find_element(parts, entry.element), entry.count, entry.count);
            continue;
        }
        for (const Element& element : parts.elements) {
            if (passes(element, *entry.any)) add(element, 0, entry.count);
        }
    }
    return allowed;
}

int count_not_assessed(const std::vector<Margin>& margins) {
    return static_cast<int>(std::count_if(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.severity == Severity::not_assessed;
    }));
}

Wiring lay_wiring(const Parts& parts, const Installation& installation, const GroupContext& group,
                  Hookup panels, Hookup bank) {
    Wiring wiring;
    wiring.frame = {.owned = *group.owned, .panel = group.panel, .panels = panels};
    wiring.frame.bank.hookup = bank;
    wiring.frame.runs = lay_runs(parts, installation, group.panel, panels, bank);
    wiring.frame.devices = place_devices(parts, installation);
    wiring.bright = bright_curve(group.panel, panels, installation.site);
    wiring.wire_ohm = wiring.frame.wire_ohm();
    wiring.terminal_c = terminal_temperature_c(wiring.frame, installation.site);
    std::vector<Margin> margins = array_margins(wiring.frame, installation.site);
    for (auto&& more : {run_margins(wiring.frame, installation.site),
                        device_margins(wiring.frame, installation)}) {
        margins.insert(margins.end(), more.begin(), more.end());
    }
    wiring.screened = screen_margins(margins);
    wiring.not_assessed = count_not_assessed(margins);
    Circuit only_runs = wiring.frame;
    only_runs.bank.owned = bank.count();
    wiring.run_price = price_to_buy(only_runs).value_or(unknown_price);
    return wiring;
}

/// How many margins of the bank and the store lack data; the operating point does not matter.
int bank_not_assessed(const Wiring& wiring, const Bank& bank, const Installation& installation) {
    Circuit circuit = wiring.frame;
    circuit.bank = bank;
    return count_not_assessed(bank_margins(circuit, installation.site, Extremes{})) +
           count_not_assessed(store_margins(circuit, installation));
}

double mean_power(const GroupContext& group, const Wiring& wiring, double bank_ohm) {
    const double total_ohm = bank_ohm + wiring.wire_ohm;
    const Hookup panels = wiring.frame.panels;
    double sum = 0.0;
    for (const DiodeCurve& curve : group.today) {
        const double each_ohm = total_ohm / panels.resistance_factor();
        const double current = curve.into_resistance(each_ohm).current_a * panels.parallel;
        sum += current * current * bank_ohm;
    }
    return sum / static_cast<double>(group.today.size());
}

}  // namespace

Pairings screen_all(const Parts& parts, const Installation& installation,
                    const RankOptions& options) {
    Pairings pairings;
    for (const OwnedPanels& owned : installation.panels) {
        GroupContext group{.owned = &owned};
        group.panel =
            panel_in_service(owned, find_panel(parts, owned.panel), installation.site.record_low_c);
        for (const Condition& condition : options.conditions) {
            group.today.push_back(
                group.panel.today.at(condition.irradiance_w_m2, condition.cell_temperature_c));
        }
        pairings.groups.push_back(std::move(group));
    }
    std::vector<Hookup> bank_hookups;
    for (const AllowedElement& allowed : allowed_elements(parts, installation)) {
        for (Hookup hookup : hookups_up_to(std::min(allowed.most, options.max_bank))) {
            const int owned = std::min(allowed.owned, hookup.count());
            pairings.banks.push_back(
                make_bank(parts, *allowed.element, hookup, owned, options.coil_temperature_c));
            if (std::find(bank_hookups.begin(), bank_hookups.end(), hookup) == bank_hookups.end()) {
                bank_hookups.push_back(hookup);
            }
        }
    }
    std::vector<BankLimits> limits;
    for (const Bank& bank : pairings.banks) limits.push_back(bank_limits(bank.element));
    // Without data depends on the bank, and on whether its wiring states the terminals'
    // surroundings.
    std::map<std::pair<std::size_t, bool>, int> lacking;

    std::size_t hookups = 0;
    for (const GroupContext& group : pairings.groups) {
        hookups += hookups_up_to(group.owned->count).size();
    }
    std::size_t done = 0;
    for (std::size_t g = 0; g < pairings.groups.size(); ++g) {
        const GroupContext& group = pairings.groups[g];
        for (Hookup panels : hookups_up_to(group.owned->count)) {
            const double share = static_cast<double>(++done) / static_cast<double>(hookups);
            if (options.progress && !options.progress(screening_share * share)) throw Interrupted();
            for (Hookup bank_hookup : bank_hookups) {
                pairings.wirings.push_back(
                    lay_wiring(parts, installation, group, panels, bank_hookup));
                const std::size_t w = pairings.wirings.size() - 1;
                const Wiring& wiring = pairings.wirings[w];
                for (std::size_t b = 0; b < pairings.banks.size(); ++b) {
                    const Bank& bank = pairings.banks[b];
                    if (bank.hookup != bank_hookup) continue;
                    if (!bank.each.fixed) {
                        ++pairings.left_out["resistance not fixed"];
                        continue;
                    }
                    const auto [known, first] =
                        lacking.try_emplace({b, wiring.terminal_c.has_value()});
                    if (first) known->second = bank_not_assessed(wiring, bank, installation);
                    const Screened by_bank =
                        screen_bank(extremes(wiring.bright, bank, wiring.wire_ohm), limits[b],
                                    wiring.frame.cold_voltage_v(), wiring.terminal_c);
                    const Screened& worse =
                        by_bank.headroom < wiring.screened.headroom ? by_bank : wiring.screened;
                    const int to_buy = bank.hookup.count() - bank.owned;
                    const double each = bank.element.price.typical().value_or(unknown_price);
                    pairings.all.push_back(
                        {.group = g,
                         .wiring = w,
                         .bank = b,
                         .power_w = mean_power(group, wiring, bank.typical_ohm()),
                         .headroom = worse.headroom,
                         .price = wiring.run_price + (to_buy > 0 ? to_buy * each : 0.0),
                         .not_assessed = known->second + wiring.not_assessed,
                         .reason = worse.headroom < 0.0 ? worse.reason : std::string{}});
                }
            }
        }
    }
    return pairings;
}

Circuit circuit_of(const Pairings& pairings, const Pairing& pairing) {
    Circuit circuit = pairings.wirings[pairing.wiring].frame;
    circuit.bank = pairings.banks[pairing.bank];
    return circuit;
}

}  // namespace heatmatch
