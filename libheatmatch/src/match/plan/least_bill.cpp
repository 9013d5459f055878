#include "least_bill.hpp"

#include <algorithm>
#include <optional>

#include "heatmatch/match/candidate/wiring.hpp"

namespace heatmatch {

double LeastBill::owned(const BillLine& line) const {
    double stated = 0.0;
    for (const Device& device : task_.yard.devices) {
        if (line.kind == PartKind::control && device.part == line.part) stated += device.owned;
    }
    for (const WireRun& run : task_.yard.runs) {
        if (line.kind == PartKind::wire && run.wire == line.part) stated += run.owned_m;
        if (line.kind == PartKind::connector && run.connector == line.part) {
            stated += run.owned_connectors;
        }
    }
    for (const AllowedElements& entry : task_.yard.elements) {
        if (line.kind == PartKind::element && !entry.any && entry.element == line.part) {
            stated += entry.count;
        }
    }
    return std::max(line.owned, stated);
}

void LeastBill::add_lines(Needs& needs, const std::vector<BillLine>& lines) {
    for (const BillLine& line : lines) {
        const auto price = line.price.typical();
        if (line.of_store || line.part.empty() || !price) continue;
        const auto [at, is_new] = numbers_.try_emplace(
            std::to_string(static_cast<int>(line.kind)) + line.part, stock_.size());
        if (is_new) stock_.push_back({.price = *price, .owned = owned(line)});
        needs[at->second] += line.quantity;
    }
}

LeastBill::Needs LeastBill::needs_of_array(std::size_t array) {
    const auto by_price = wires_by_price(*task_.parts);
    const ExistingCircuit existing = task_.circuit(array, 0);
    Circuit circuit = task_.judge->unwired(existing);
    for (const WireRun& run : task_.yard.runs) {
        RunParts parts{.run = run};
        if (!run.chooses()) {
            parts = parts_of_run(*task_.parts, run, find_wire(*task_.parts, run.wire));
        } else if (!by_price.empty()) {
            parts = parts_of_run(*task_.parts, run, *by_price.front());
        }
        circuit.runs.push_back(std::move(parts));
    }
    Needs needs;
    add_lines(
        needs,
        other_items(circuit, task_.judge->site_of(existing), *task_.parts, task_.yard.goals).lines);
    return needs;
}

const PartNeeds& LeastBill::of_array(std::size_t array) {
    const auto known = by_array_.find(array);
    if (known != by_array_.end()) return known->second;
    const Needs needs = needs_of_array(array);
    return by_array_.emplace(array, PartNeeds(needs.begin(), needs.end())).first->second;
}

const PartNeeds& LeastBill::of_set(std::size_t set, const std::vector<std::size_t>& arrays) {
    const auto known = by_set_.find(set);
    if (known != by_set_.end()) return known->second;
    std::optional<Needs> least;
    for (const std::size_t array : arrays) {
        const PartNeeds& of = of_array(array);
        const Needs needs(of.begin(), of.end());
        if (!least) least = needs;
        for (auto& [part, quantity] : *least) {
            const auto found = needs.find(part);
            quantity = std::min(quantity, found == needs.end() ? 0.0 : found->second);
        }
    }
    PartNeeds made;
    if (least) made.assign(least->begin(), least->end());
    return by_set_.emplace(set, std::move(made)).first->second;
}

double LeastBill::of_elements(std::size_t bank) {
    Needs needs;
    add_lines(needs, element_lines(task_.bank(bank)));
    const PartNeeds made(needs.begin(), needs.end());
    return at_least({&made});
}

const LeastBill::OfCircuit& LeastBill::of_circuit(std::size_t array, std::size_t bank) {
    const auto known = by_circuit_.find({array, bank});
    if (known != by_circuit_.end()) return known->second;
    const Bank& fed = task_.bank(bank);
    const auto frame = std::pair(array, task_.banks.branch_runs ? fed.branches() : 0);
    auto beside = by_frame_.find(frame);
    if (beside == by_frame_.end() && task_.banks.lays_for_heat) {
        // The wire at the element depends on its heat: the cheapest is a lower bound.
        beside = by_frame_.emplace(frame, needs_of_array(array)).first;
    }
    if (beside == by_frame_.end()) {
        const ExistingCircuit existing = task_.circuit(array, bank);
        const Circuit circuit = task_.judge->wired(existing);
        Needs needs;
        add_lines(needs, other_items(circuit, task_.judge->site_of(existing), *task_.parts,
                                     task_.yard.goals)
                             .lines);
        beside = by_frame_.emplace(frame, std::move(needs)).first;
    }
    Needs needs = beside->second;
    add_lines(needs, element_lines(fed));
    OfCircuit made{.needs = {needs.begin(), needs.end()}};
    made.price = at_least({&made.needs});
    return by_circuit_.emplace(std::pair(array, bank), std::move(made)).first->second;
}

double LeastBill::at_least(const std::vector<const PartNeeds*>& circuits) {
    sum_.assign(stock_.size(), 0.0);
    for (const PartNeeds* needs : circuits) {
        for (const auto& [part, quantity] : *needs) sum_[part] += quantity;
    }
    double total = 0.0;
    for (std::size_t part = 0; part < sum_.size(); ++part) {
        total += std::max(0.0, sum_[part] - stock_[part].owned) * stock_[part].price;
    }
    return total;
}

}  // namespace heatmatch
