#include "circuit_lists.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/unlike_array_margins.hpp"

namespace heatmatch {

namespace {

constexpr auto comes_later = [](const auto& a, const auto& b) {
    if (a.kwh != b.kwh) return a.kwh < b.kwh;
    return std::pair(a.array, a.place) > std::pair(b.array, b.place);
};

}  // namespace

CircuitLists::CircuitLists(PlanTask& task) : task_(task) {
    for (std::size_t bank = 0; bank < task.banks.banks.size(); ++bank) {
        if (const auto margin = never_assessed(bank); !margin.empty()) {
            reject(std::string(margin));
            continue;
        }
        const double ohm = task.banks.banks[bank].typical_ohm();
        const auto known = std::find(ohms_.begin(), ohms_.end(), ohm);
        fit_.push_back({.bank = bank, .ohm = static_cast<std::size_t>(known - ohms_.begin())});
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

std::string_view CircuitLists::never_assessed(std::size_t bank) const {
    const Element& element = task_.banks.banks[bank].element;
    if (!has_known_heat(task_.banks, bank)) return "sheath temperature";
    if (!std::isfinite(task_.numbers[bank]->sheath_v)) return "sheath voltage";
    return element.terminal_limit_c ? "" : "terminal temperature";
}

std::optional<std::size_t> CircuitLists::find(const PanelCounts& panels) const {
    const auto found = by_panels_.find(panels);
    return found == by_panels_.end() ? std::nullopt : std::optional(found->second);
}

double CircuitLists::headroom_at_most(const ListedCircuit& circuit) const {
    const auto known = array_headroom_.find(circuit.array);
    return known == array_headroom_.end() ? circuit.most_headroom
                                          : std::min(circuit.most_headroom, known->second);
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
    constexpr double open_ohm = std::numeric_limits<double>::infinity();
    if (!reversed_too_far(*circuit.unlike, task_.judge->site_of(existing), open_ohm)) return false;
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
    for (const FitBank& fit : fit_) fed.push_back({.kwh = kwh[fit.ohm], .bank = fit.bank});
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

bool CircuitLists::is_reversed(std::size_t array, const Circuit& circuit, const Site& site) {
    double& reversed_ohm = reversed_below_ohm_[array];
    const double load_ohm = circuit.bank.low_ohm() + circuit.wire_ohm_at(room_c);
    if (load_ohm <= reversed_ohm) return true;
    if (!reversed_too_far(*circuit.unlike, site, load_ohm)) return false;
    reversed_ohm = load_ohm;
    return true;
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
    if (circuit.unlike && is_reversed(array, circuit, site)) {
        reject("reversed panel");
        return std::nullopt;
    }
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
    if (!task_.banks.branch_runs) {
        const auto known = array_headroom_.try_emplace(circuit.array, 1.0).first;
        known->second = std::min(known->second, circuit.verdict.array_headroom);
    }
    if (circuit.verdict.good()) return;
    if (circuit.verdict.danger || !circuit.verdict.assessed) reject(circuit.verdict.reason);
    if (circuit.verdict.array_headroom < 0.0 && !task_.banks.branch_runs) {
        dead_[circuit.array] = true;
    }
}

}  // namespace heatmatch
