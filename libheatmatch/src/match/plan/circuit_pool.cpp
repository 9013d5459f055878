#include "circuit_pool.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/unlike_array_margins.hpp"

namespace heatmatch {

namespace {

WiredArray with_wires(std::size_t array, const Circuit& circuit) {
    WiredArray wired{.array = array};
    for (const RunParts& run : circuit.runs) {
        wired.wires.push_back(run.wire ? run.wire->id : std::string());
        wired.wires.push_back(run.insulation ? run.insulation->id : std::string());
    }
    return wired;
}

/// Of the runs whose wire is chosen, with the wire of the catalog that has the most.
double most_chosen_ohm(const Parts& parts, const Installation& yard) {
    double sum_ohm = 0.0;
    for (const WireRun& run : yard.runs) {
        if (!run.chooses()) continue;
        double most_ohm = 0.0;
        for (const Wire& wire : parts.wires) {
            most_ohm = std::max(most_ohm, parts_of_run(parts, run, wire).loop_ohm());
        }
        sum_ohm += most_ohm;
    }
    return sum_ohm;
}

}  // namespace

CircuitPool::CircuitPool(PlanTask& task)
    : task_(task), least_bill_(task), set_of_array_(task.family.arrays.size()) {
    if (task.banks.lays_for_heat) most_chosen_ohm_ = most_chosen_ohm(*task.parts, task.yard);
    for (std::size_t bank = 0; bank < task.bank_count(); ++bank) {
        if (const auto margin = never_assessed(bank); !margin.empty()) {
            reject(std::string(margin));
            continue;
        }
        const double ohm = task.bank(bank).typical_ohm();
        const auto known = std::find(ohms_.begin(), ohms_.end(), ohm);
        fit_.push_back({.bank = bank,
                        .ohm = static_cast<std::size_t>(known - ohms_.begin()),
                        .price = least_bill_.of_elements(bank)});
        if (known == ohms_.end()) ohms_.push_back(ohm);
        if (!task.bank(bank).unlike) equal_ohms_ = ohms_.size();
    }
    for (std::size_t a = 0; a < task.family.arrays.size(); ++a) {
        const FamilyArray& array = task.family.arrays[a];
        const auto [at, is_new] = by_panels_.try_emplace(array.panels, sets_.size());
        if (is_new) sets_.push_back({.panels = array.panels});
        sets_[at->second].arrays.push_back(a);
        set_of_array_[a] = at->second;
    }
}

std::string_view CircuitPool::never_assessed(std::size_t bank) const {
    if (const auto& unlike = task_.bank(bank).unlike) {
        for (const Bank& one : unlike->elements) {
            const auto margin = never_assessed(task_.alone.at(one.element.id));
            if (!margin.empty()) return margin;
        }
        return "";
    }
    const Element& element = task_.banks.banks[bank].element;
    if (!has_known_heat(task_.banks, bank)) return "sheath temperature";
    if (!std::isfinite(task_.numbers[bank]->sheath_v)) return "sheath voltage";
    return element.terminal_limit_c ? "" : "terminal temperature";
}

std::optional<std::size_t> CircuitPool::find(const PanelCounts& panels) const {
    const auto found = by_panels_.find(panels);
    return found == by_panels_.end() ? std::nullopt : std::optional(found->second);
}

double CircuitPool::headroom_at_most(ListedCircuit& circuit) {
    if (circuit.element_w) {
        const BankNumbers& numbers = *task_.numbers[circuit.choice.bank];
        if (std::isfinite(numbers.heat_w) && numbers.heat_w > 0.0) {
            circuit.most_headroom = std::min(
                circuit.most_headroom, heat_at_most(task_.banks, numbers, *circuit.element_w));
        }
        circuit.element_w.reset();
    }
    const auto known = array_headroom_.find(circuit.wired);
    return known == array_headroom_.end() ? circuit.most_headroom
                                          : std::min(circuit.most_headroom, known->second);
}

bool CircuitPool::is_dead(std::size_t array) {
    const auto known = dead_.find(array);
    if (known != dead_.end()) return known->second;
    bool& dead = dead_[array];
    if (task_.energies->only_group(task_.family.arrays[array])) return dead;
    const ExistingCircuit existing = task_.circuit(array, 0);
    const Circuit circuit = task_.judge->unwired(existing);
    constexpr double open_ohm = std::numeric_limits<double>::infinity();
    dead = reversed_too_far(*circuit.unlike, task_.judge->site_of(existing), open_ohm);
    if (dead) {
        reject("reversed panel");
        failing_[{.array = array}] = "reversed panel";
    }
    return dead;
}

const std::string* CircuitPool::fails_with_any(const ListedCircuit& circuit) {
    static_cast<void>(is_dead(circuit.choice.array));
    auto known = failing_.find({.array = circuit.choice.array});
    if (known == failing_.end()) known = failing_.find(circuit.wired);
    return known == failing_.end() ? nullptr : &known->second;
}

CircuitPool::Frame& CircuitPool::frame(const PlanChoice& choice) {
    const Bank& fed = task_.bank(choice.bank);
    const auto key = std::pair(choice.array, task_.banks.branch_runs ? fed.branches() : 0);
    const auto known = frames_.find(key);
    if (known != frames_.end()) return known->second;
    const ExistingCircuit existing = task_.circuit(choice.array, choice.bank);
    Frame made{.circuit = task_.judge->wired(existing), .site = task_.judge->site_of(existing)};
    made.circuit.heat = nullptr;
    return frames_.emplace(key, std::move(made)).first->second;
}

bool CircuitPool::is_reversed(std::size_t array, const Circuit& circuit, const Site& site) {
    // The lower the resistance, the more a weak panel absorbs.
    auto& [reversed_ohm, held_ohm] = reversed_.try_emplace(array).first->second;
    const double load_ohm = circuit.bank.low_ohm() + circuit.wire_ohm_at(room_c);
    if (load_ohm <= reversed_ohm) return true;
    if (load_ohm >= held_ohm) return false;
    const bool reversed = reversed_too_far(*circuit.unlike, site, load_ohm);
    (reversed ? reversed_ohm : held_ohm) = load_ohm;
    return reversed;
}

std::string CircuitPool::check_elements(const Circuit& circuit, const Site& site, double more_ohm,
                                        ListedCircuit& listed) {
    const auto [array, bank] = listed.choice;
    constexpr double rounding = 1.0 + 1e-9;
    const auto check = [&](const BankNumbers& numbers, double element_w) -> std::string {
        if (listed.cold_v > numbers.sheath_v) return "sheath voltage";
        if (element_w > rounding * numbers.power_w) {
            return task_.banks.reasons->name(numbers.power_reason);
        }
        listed.most_headroom = std::min(
            listed.most_headroom,
            std::min(1.0 - listed.cold_v / numbers.sheath_v, 1.0 - element_w / numbers.rated_w));
        return {};
    };
    if (!circuit.bank.unlike) {
        const BankNumbers& numbers = *task_.numbers[bank];
        if (listed.cold_v > numbers.sheath_v) return "sheath voltage";
        listed.element_w = bright_.element_at_least_w(array, circuit, site, more_ohm);
        return check(numbers, *listed.element_w);
    }
    // An element that exceeds its limit alone in the store does so beside others.
    const std::vector<double> shares = circuit.bank.unlike->power_shares();
    const double bank_w = bright_.bank_at_least_w(array, circuit, site, more_ohm);
    for (std::size_t i = 0; i < shares.size(); ++i) {
        const std::string& id = circuit.bank.unlike->elements[i].element.id;
        std::string fails = check(task_.limits_of(id), shares[i] * bank_w);
        if (!fails.empty()) return fails;
    }
    return {};
}

/// The circuit of an array and a bank, unless a quick check finds a danger.
std::optional<ListedCircuit> CircuitPool::screen(const PlanChoice& choice) {
    const auto [array, bank] = choice;
    auto& [circuit, site] = frame(choice);
    circuit.bank = task_.bank(bank);
    circuit.heat = nullptr;
    ListedCircuit listed{
        .choice = choice, .wired = {.array = array}, .cold_v = circuit.cold_voltage_v()};
    std::string fails;
    if (task_.banks.lays_for_heat) {
        // Most fail with any wire, and to choose it takes long.
        ListedCircuit tried = listed;
        fails = check_elements(circuit, site, most_chosen_ohm_, tried);
        if (fails.empty()) {
            circuit = task_.judge->wired(task_.circuit(array, bank));
            circuit.heat = nullptr;
            listed.wired = with_wires(array, circuit);
        }
    }
    if (fails.empty()) fails = check_elements(circuit, site, 0.0, listed);
    if (!fails.empty()) {
        reject(fails);
        return std::nullopt;
    }
    if (circuit.unlike && is_reversed(array, circuit, site)) {
        reject("reversed panel");
        return std::nullopt;
    }
    listed.kwh = task_.energies->season(array).kwh(circuit.bank.typical_ohm(), circuit.wire_ohm());
    listed.price = least_bill_.of_circuit(array, bank).price;
    return listed;
}

ListedCircuit* CircuitPool::screened(const PlanChoice& choice) {
    auto known = made_.find(choice);
    if (known == made_.end()) known = made_.emplace(choice, screen(choice)).first;
    return known->second ? &*known->second : nullptr;
}

void CircuitPool::judge(std::span<ListedCircuit* const> circuits) {
    std::vector<ListedCircuit*> open;
    for (ListedCircuit* circuit : circuits) {
        if (circuit->judged) continue;
        circuit->judged = true;
        if (const std::string* reason = fails_with_any(*circuit)) {
            circuit->verdict.danger = true;
            circuit->verdict.headroom = -1.0;
            circuit->verdict.reason = *reason;
            continue;
        }
        open.push_back(circuit);
    }
    checks_ += open.size();
    parallel_for(open.size(), worker_count(task_.options.threads, open.size()),
                 [&](std::size_t i, std::size_t, const Pulse&) {
                     const auto [array, bank] = open[i]->choice;
                     const ExistingCircuit existing = task_.circuit(array, bank);
                     open[i]->verdict = task_.judge->judge({&existing, 1});
                 });
    for (const ListedCircuit* circuit : open) note(*circuit);
}

void CircuitPool::note(const ListedCircuit& circuit) {
    const PlanVerdict& verdict = circuit.verdict;
    if (!task_.banks.branch_runs) {
        const auto known = array_headroom_.try_emplace(circuit.wired, 1.0).first;
        known->second = std::min(known->second, verdict.array_headroom);
    }
    if (!verdict.danger && !verdict.assessed && !verdict.missing.empty()) {
        LackedFact& fact = lacking_[{verdict.missing, verdict.subject}];
        if (fact.circuits++ == 0) fact.example = circuit.choice;
    }
    if (verdict.good()) return;
    if (verdict.danger || !verdict.assessed) reject(verdict.reason);
    const bool whatever_bank = verdict.array_headroom < 0.0 || !verdict.array_assessed;
    if (whatever_bank && !task_.banks.branch_runs) {
        failing_[circuit.wired] = verdict.reason;
        if (!task_.banks.lays_for_heat) dead_[circuit.wired.array] = true;
    }
}

}  // namespace heatmatch
