#include "circuit_lists.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/unlike_array_margins.hpp"

namespace heatmatch {

namespace {

constexpr auto comes_later = [](const auto& a, const auto& b) {
    if (a.kwh != b.kwh) return a.kwh < b.kwh;
    return std::pair(a.array, a.place) > std::pair(b.array, b.place);
};

/// Margins that depend on the array, its wire and its devices, but not on the elements.
constexpr auto of_arrays_alone = std::to_array<std::string_view>(
    {"cold voltage", "reverse current", "dc breaking", "disconnect"});

}  // namespace

CircuitLists::CircuitLists(PlanTask& task) : task_(task) {
    for (const Bank& bank : task.banks.banks) {
        const double ohm = bank.typical_ohm();
        const auto known = std::find(ohms_.begin(), ohms_.end(), ohm);
        ohm_of_.push_back(static_cast<std::size_t>(known - ohms_.begin()));
        if (known == ohms_.end()) ohms_.push_back(ohm);
    }
    for (std::size_t a = 0; a < task.family.arrays.size(); ++a) {
        const FamilyArray& array = task.family.arrays[a];
        const auto [at, is_new] = by_panels_.try_emplace(array.panels, sets_.size());
        if (is_new) sets_.push_back({.panels = array.panels});
        sets_[at->second].arrays.push_back(a);
    }
    for (Set& set : sets_) {
        push(set, {.kwh = task.energies->largest_kwh(set.panels), .stage = Stage::set});
    }
}

std::optional<std::size_t> CircuitLists::find(const PanelCounts& panels) const {
    const auto found = by_panels_.find(panels);
    return found == by_panels_.end() ? std::nullopt : std::optional(found->second);
}

double CircuitLists::rest_at_most_kwh(std::size_t set) const {
    const auto& leads = sets_[set].leads;
    return leads.empty() ? -1.0 : leads.front().kwh;
}

void CircuitLists::push(Set& set, Lead lead) {
    set.leads.push_back(lead);
    std::push_heap(set.leads.begin(), set.leads.end(), comes_later);
}

void CircuitLists::step(std::size_t index) {
    Set& set = sets_[index];
    if (set.leads.empty()) return;
    std::pop_heap(set.leads.begin(), set.leads.end(), comes_later);
    const Lead lead = set.leads.back();
    set.leads.pop_back();
    switch (lead.stage) {
        case Stage::set:
            open_set(set);
            break;
        case Stage::array:
            open_array(set, lead.array);
            break;
        case Stage::banks:
            try_bank(set, lead);
            break;
        case Stage::circuit:
            set.found.push_back(set.waiting[lead.place]);
            break;
    }
}

void CircuitLists::open_set(Set& set) {
    for (const std::size_t array : set.arrays) {
        if (task_.energies->only_group(task_.family.arrays[array])) {
            open_array(set, array);
            continue;
        }
        const auto most = task_.energies->at_most_kwh(task_.family.arrays[array], ohms_);
        if (most.empty()) continue;
        push(set, {.kwh = *std::max_element(most.begin(), most.end()),
                   .stage = Stage::array,
                   .array = array});
    }
}

bool CircuitLists::is_dead(std::size_t array) {
    if (dead_.contains(array)) return true;
    if (task_.energies->only_group(task_.family.arrays[array])) return false;
    const ExistingCircuit existing = task_.circuit(array, 0);
    const Circuit circuit = task_.judge->unwired(existing);
    if (!reversed_with_load_open(*circuit.unlike, task_.judge->site_of(existing))) return false;
    reject("reversed panel");
    dead_[array] = true;
    return true;
}

void CircuitLists::open_array(Set& set, std::size_t array) {
    if (is_dead(array)) return;
    const ArraySeason& season = task_.energies->season(array);
    std::vector<double> kwh;
    kwh.reserve(ohms_.size());
    for (const double ohm : ohms_) kwh.push_back(season.kwh(ohm, 0.0));
    std::vector<FedBank>& fed = fed_[array];
    for (std::size_t bank = 0; bank < ohm_of_.size(); ++bank) {
        fed.push_back({.kwh = kwh[ohm_of_[bank]], .bank = bank});
    }
    std::stable_sort(fed.begin(), fed.end(),
                     [](const FedBank& a, const FedBank& b) { return a.kwh > b.kwh; });
    if (!fed.empty()) push(set, {.kwh = fed.front().kwh, .stage = Stage::banks, .array = array});
}

CircuitLists::Frame& CircuitLists::frame(std::size_t array, std::size_t bank) {
    const Bank& fed = task_.banks.banks[bank];
    const auto key = std::pair(array, task_.banks.branch_runs ? fed.hookup.parallel : 0);
    const auto known = frames_.find(key);
    if (known != frames_.end()) return known->second;
    const ExistingCircuit existing = task_.circuit(array, bank);
    Frame made{.circuit = task_.judge->wired(existing), .site = task_.judge->site_of(existing)};
    made.circuit.heat = nullptr;
    return frames_.emplace(key, std::move(made)).first->second;
}

/// The circuit of an array and a bank, unless a quick check finds a danger.
std::optional<ListedCircuit> CircuitLists::screened(std::size_t array, std::size_t bank) {
    auto& [circuit, site] = frame(array, bank);
    if (task_.banks.lays_for_heat) {
        circuit = task_.judge->wired(task_.circuit(array, bank));
    } else {
        circuit.bank = task_.banks.banks[bank];
    }
    const BankNumbers& numbers = *task_.numbers[bank];
    ListedCircuit listed{.array = array, .bank = bank, .cold_v = circuit.cold_voltage_v()};
    if (listed.cold_v > numbers.sheath_v) {
        reject("sheath voltage");
        return std::nullopt;
    }
    circuit.heat = nullptr;
    const double element_w = bright_.element_at_least_w(array, circuit, site);
    constexpr double rounding = 1.0 + 1e-9;
    if (element_w > rounding * numbers.power_w) {
        reject(task_.banks.reasons->name(numbers.power_reason));
        return std::nullopt;
    }
    listed.most_headroom =
        std::min(1.0 - listed.cold_v / numbers.sheath_v, 1.0 - element_w / numbers.rated_w);
    if (std::isfinite(numbers.heat_w) && numbers.heat_w > 0.0) {
        listed.most_headroom =
            std::min(listed.most_headroom, heat_at_most(task_.banks, numbers, element_w));
    }
    const double wire_ohm = circuit.wire_ohm();
    listed.kwh = task_.energies->season(array).kwh(task_.banks.banks[bank].typical_ohm(), wire_ohm);
    return listed;
}

void CircuitLists::try_bank(Set& set, Lead lead) {
    if (dead_.contains(lead.array)) return;
    const std::vector<FedBank>& fed = fed_[lead.array];
    if (auto listed = screened(lead.array, fed[lead.place].bank)) {
        push(set, {.kwh = std::min(listed->kwh, lead.kwh),
                   .stage = Stage::circuit,
                   .array = lead.array,
                   .place = set.waiting.size()});
        set.waiting.push_back(std::move(*listed));
    }
    if (++lead.place == fed.size()) {
        fed_.erase(lead.array);
        return;
    }
    lead.kwh = fed[lead.place].kwh;
    push(set, lead);
}

void CircuitLists::judge(ListedCircuit& circuit) {
    if (circuit.judged) return;
    ++checks_;
    circuit.judged = true;
    if (dead_.contains(circuit.array)) {
        circuit.verdict.danger = true;
        circuit.verdict.headroom = -1.0;
        return;
    }
    const ExistingCircuit existing = task_.circuit(circuit.array, circuit.bank);
    circuit.verdict = task_.judge->judge({&existing, 1});
    if (circuit.verdict.good()) return;
    if (circuit.verdict.danger || !circuit.verdict.assessed) reject(circuit.verdict.reason);
    const bool of_array = std::find(of_arrays_alone.begin(), of_arrays_alone.end(),
                                    circuit.verdict.reason) != of_arrays_alone.end();
    if (circuit.verdict.danger && of_array && !task_.banks.branch_runs) {
        dead_[circuit.array] = true;
    }
}

}  // namespace heatmatch
