#include "match/margins/heat_limits.hpp"
#include "screen.hpp"
#include "screen_wiring.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/wiring.hpp"

namespace heatmatch {

namespace {

constexpr double unlimited = std::numeric_limits<double>::infinity();

/// An element that may be used, and its number.
struct AllowedElement {
    const Element* element = nullptr;
    int owned = 0;
    int most = 0;
};

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

/// Throws InvalidInput where no element of the catalog is of that family.
void check_family(const Parts& parts, const std::string& family) {
    std::set<std::string> known;
    for (const Element& element : parts.elements) known.insert(element.family);
    if (known.contains(family)) return;
    Sentences all;
    for (const std::string& name : known) all.push_back(sentence_of(Name{name}));
    throw InvalidInput(ErrorDetail{
        .part = "installation",
        .field = "elements.any.family",
        .value = quote(family),
        .allowed = rank_sentences::say<"rank.one_of">(with<"families">(std::move(all))).text(),
        .remedy = rank_sentences::say<"rank.name_family">()});
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
        for (const std::string& family : entry.any->family) check_family(parts, family);
        for (const Element& element : parts.elements) {
            if (passes(element, *entry.any)) add(element, 0, entry.count);
        }
    }
    return allowed;
}

/// The run at the element, where no wiring changes it: its limits are then known to the screen.
std::vector<RunParts> runs_at_element(const Parts& parts, const Installation& installation) {
    std::vector<RunParts> runs;
    for (const WireRun& run : installation.runs) {
        if (run.carries != Carried::bank && run.carries != Carried::branch) continue;
        if (run.chooses()) return {};
        runs = {parts_of_run(parts, run, find_wire(parts, run.wire))};
    }
    return runs;
}

/// The same after the runs with devices, by name alone. Without voltage and current a device counts
/// as opening any circuit, so the bound for a bank is too weak; the exact check uses the wiring.
std::vector<RunParts> runs_of_bank(const Parts& parts, const Installation& installation) {
    std::vector<RunParts> runs;
    std::vector<RunParts> last = runs_at_element(parts, installation);
    for (const Device& device : installation.devices) {
        const auto is_same = [&device](const RunParts& known) {
            return known.run.name == device.run;
        };
        if (device.run.empty() || std::any_of(runs.begin(), runs.end(), is_same) ||
            std::any_of(last.begin(), last.end(), is_same)) {
            continue;
        }
        runs.push_back({.run = {.name = device.run, .carries = Carried::array}});
    }
    std::move(last.begin(), last.end(), std::back_inserter(runs));
    return runs;
}

/// Voltage limit of its sheath if the rated voltage is DC; if that is not stated, it may be.
double careful_sheath_v(const Bank& bank, double sheath_v) {
    const Element& element = bank.element;
    const bool untold = !is_bare(bank) && !element.rated_dc && element.rated_v;
    return untold ? std::min(sheath_v, *element.rated_v) : sheath_v;
}

/// Typical price of one element; infinite where it is not known in that currency.
double price_of(const Element& element, const std::string& currency) {
    const std::string& own = element.price.currency;
    const bool other = !currency.empty() && !own.empty() && own != currency;
    return other ? unknown_price : element.price.typical().value_or(unknown_price);
}

BankNumbers numbers_of(const Bank& bank, std::size_t index, const BankLimit& of_heat, double each,
                       ReasonNames& reasons) {
    const HeatLimit& heat = of_heat.limit;
    const int to_buy = bank.hookup.count() - bank.owned;
    const double low = bank.each.low_ohm;
    const double high = bank.each.high_ohm;
    const BankLimits limits = bank_limits(bank, of_heat.heat.get());
    const double rated_w = limits.element_power_w.value_or(unlimited);
    const double power_w = std::min(rated_w, heat.element_w);
    const double share =
        largest_part(bank.hookup.series, low, high) * largest_part(bank.hookup.parallel, low, high);
    const Hookup left = bank.hookup_left();
    const double share_of_left = left.parallel < 1 ? 0.0
                                                   : largest_part(left.series, low, high) *
                                                         largest_part(left.parallel, low, high) /
                                                         of_heat.survivor_w;
    const double sheath_v = limits.sheath_voltage_v.value_or(unlimited);
    return {
        .ln_typical = std::log(bank.typical_ohm()),
        .typical_ohm = bank.typical_ohm(),
        .sheath_v = sheath_v,
        .per_sheath_v = 1.0 / sheath_v,
        .share_per_power_w = share / power_w,
        .price = to_buy > 0 ? to_buy * each : 0.0,
        .terminal_c = limits.terminal_c.value_or(unlimited),
        .bank = index,
        .power_w = power_w,
        .rated_w = rated_w,
        .heat_w = heat.element_w,
        .careful_w = of_heat.careful_w,
        .careful_sheath_v = careful_sheath_v(bank, sheath_v),
        .power_reason = reasons.number(heat.element_w < rated_w ? heat.reason : "element power"),
        .low_ohm = bank.low_ohm(),
        .high_ohm = bank.high_ohm(),
        .ln_low = std::log(bank.low_ohm()),
        .ln_high = std::log(bank.high_ohm()),
        .per_count = 1.0 / bank.hookup.count(),
        .largest_share = share,
        .survivor_w = of_heat.survivor_w,
        .careful_survivor_w = of_heat.careful_survivor_w,
        .share_per_survivor_w = share_of_left};
}

}  // namespace

ScreenContext screen_context(const Parts& parts, const Installation& installation,
                             const RankOptions& options, const SeasonWeather* season) {
    ScreenContext context{.parts = &parts,
                          .installation = &installation,
                          .options = &options,
                          .season = season,
                          .devices = place_devices(parts, installation),
                          .plain = installation.runs.empty() && installation.devices.empty(),
                          .lays_for_heat = chooses_for_heat(installation)};
    context.branch_runs =
        std::any_of(installation.runs.begin(), installation.runs.end(),
                    [](const WireRun& run) { return run.carries == Carried::branch; });
    std::vector<std::size_t> of_hookup;  // of each bank, in bank_hookups
    bool named = options.element.empty();
    for (const AllowedElement& allowed : allowed_elements(parts, installation)) {
        if (!options.element.empty() && allowed.element->id != options.element) continue;
        named = true;
        for (Hookup hookup : hookups_up_to(std::min(allowed.most, options.max_bank))) {
            if (options.bank && !(hookup == *options.bank)) continue;
            const int owned = std::min(allowed.owned, hookup.count());
            Bank bank =
                make_bank(parts, *allowed.element, hookup, owned, options.coil_temperature_c);
            if (!bank.each.fixed) {
                ++context.not_fixed;
                continue;
            }
            const auto known =
                std::find(context.bank_hookups.begin(), context.bank_hookups.end(), hookup);
            of_hookup.push_back(static_cast<std::size_t>(known - context.bank_hookups.begin()));
            if (known == context.bank_hookups.end()) context.bank_hookups.push_back(hookup);
            context.banks.push_back(std::move(bank));
        }
    }
    if (!named) {
        throw InvalidInput(
            ErrorDetail{.part = "ranking",
                        .field = "element",
                        .value = quote(find_element(parts, options.element).id),
                        .allowed = "an element permitted by `elements` of the installation",
                        .remedy = rank_sentences::say<"rank.allow_element">()});
    }
    std::vector<const Bank*> distinct;
    distinct.reserve(context.banks.size());
    for (const Bank& bank : context.banks) distinct.push_back(&bank);
    context.runs_of_bank = runs_of_bank(parts, installation);
    const std::vector<BankLimit> limits = heat_limits(
        fill_store(parts, installation), distinct, context.runs_of_bank, context.devices,
        options.threads, options.memory ? &options.memory->heat : nullptr);
    context.numbers.resize(context.bank_hookups.size());
    for (std::size_t i = 0; i < context.banks.size(); ++i) {
        const BankLimit& limit = limits[i];
        const double each = price_of(context.banks[i].element, installation.goals.currency);
        context.numbers[of_hookup[i]].push_back(
            numbers_of(context.banks[i], i, limit, each, *context.reasons));
        context.heats.push_back(limit.heat);
        context.screen_heats.push_back(limit.unsourced);
        context.survivors.push_back(limit.survivors);
        context.heat_tables.push_back(limit.table);
        context.settled.push_back(std::make_shared<SettledBank>());
    }
    context.loads = load_classes(context.banks);
    // The highest voltage limits first: from the first one that fails, all others fail.
    for (std::vector<BankNumbers>& numbers : context.numbers) {
        std::stable_sort(
            numbers.begin(), numbers.end(),
            [](const BankNumbers& a, const BankNumbers& b) { return a.sheath_v > b.sheath_v; });
    }
    return context;
}

PanelInService panel_of(const ScreenContext& context, std::size_t group) {
    const OwnedPanels& owned = context.installation->panels[group];
    return panel_in_service(owned, find_panel(*context.parts, owned.panel),
                            context.installation->site.record_low_c);
}

bool has_known_heat(const ScreenContext& context, std::size_t bank) {
    const BankHeat* heat = context.heats[bank].get();
    return heat == nullptr || heat->missing.empty();
}

double heat_at_most(const ScreenContext& context, const BankNumbers& numbers, double element_w) {
    return context.heat_tables[numbers.bank]->at_most(
        element_w / numbers.heat_w,
        [&](double share) {
            const Circuit alone{.bank = context.banks[numbers.bank],
                                .runs = context.runs_of_bank,
                                .devices = context.devices,
                                .heat = context.screen_heats[numbers.bank]};
            const Extremes extremes{.element_power_w = share * numbers.heat_w};
            return screen_heat(alone, context.installation->site, extremes).screened.headroom;
        },
        context.heats[numbers.bank] && context.heats[numbers.bank]->moist);
}

Circuit frame_of(const ScreenContext& context, std::size_t group, const PanelInService& panel,
                 Hookup panels, Hookup bank) {
    Circuit frame{.owned = context.installation->panels[group], .panel = panel, .panels = panels};
    frame.bank.hookup = bank;
    frame.runs = lay_runs(*context.parts, *context.installation, frame);
    frame.devices = context.devices;
    return frame;
}

Circuit circuit_of(const ScreenContext& context, const Circuit& frame, std::size_t bank) {
    Circuit circuit = frame;
    circuit.bank = context.banks[bank];
    circuit.heat = context.heats[bank];
    if (context.lays_for_heat) {
        const Installation& installation = *context.installation;
        lay_for_heat(circuit, *context.parts, installation,
                     bright_extremes(circuit, installation.site));
    }
    return circuit;
}

}  // namespace heatmatch
