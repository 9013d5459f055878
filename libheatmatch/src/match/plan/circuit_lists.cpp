#include "circuit_lists.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace heatmatch {

CircuitLists::CircuitLists(CircuitPool& pool, double kwh_per_price, bool unlike_banks)
    : pool_(pool), kwh_per_price_(kwh_per_price), sets_(pool.sets()) {
    for (const CircuitPool::FitBank& fit : pool.fit()) {
        if (unlike_banks || !pool.task().bank(fit.bank).unlike) fit_.push_back(fit);
    }
    for (std::size_t set = 0; set < sets_.size(); ++set) {
        double most = pool.task().energies->largest_kwh(pool.panels(set));
        if (kwh_per_price > 0.0) {
            LeastBill& bill = pool.least_bill();
            most -= kwh_per_price * bill.at_least({&bill.of_set(set, pool.arrays(set))});
        }
        push(sets_[set], {.value = most, .stage = Stage::set});
    }
}

double CircuitLists::rest_at_most(std::size_t set) const {
    const auto& leads = sets_[set].leads;
    return leads.empty() ? -std::numeric_limits<double>::infinity() : leads.front().value;
}

std::optional<std::size_t> CircuitLists::next_array(std::size_t set) const {
    const auto& leads = sets_[set].leads;
    if (leads.empty() || leads.front().stage != Stage::array) return std::nullopt;
    return leads.front().array;
}

void CircuitLists::push(Set& set, Lead lead) {
    set.leads.push_back(lead);
    std::push_heap(set.leads.begin(), set.leads.end());
}

void CircuitLists::step(std::size_t index) {
    Set& set = sets_[index];
    if (set.leads.empty()) return;
    std::pop_heap(set.leads.begin(), set.leads.end());
    const Lead lead = set.leads.back();
    set.leads.pop_back();
    switch (lead.stage) {
        case Stage::set:
            open_set(index);
            break;
        case Stage::array:
            open_array(set, lead.array);
            break;
        case Stage::banks:
            try_bank(set, lead);
            break;
        case Stage::circuit:
            set.found.push_back(lead.circuit);
            break;
    }
}

double CircuitLists::price_of(std::size_t array) {
    if (kwh_per_price_ <= 0.0) return 0.0;
    LeastBill& bill = pool_.least_bill();
    return bill.at_least({&bill.of_array(array)});
}

void CircuitLists::open_set(std::size_t index) {
    Set& set = sets_[index];
    ArrayEnergies& energies = *pool_.task().energies;
    for (const std::size_t array : pool_.arrays(index)) {
        if (energies.only_group(pool_.task().family.arrays[array])) {
            open_array(set, array);
            continue;
        }
        // Of many unlike banks the bound into any resistance serves.
        const auto& kwh = energies.at_most_kwh(array, pool_.equal_ohms());
        double most = -std::numeric_limits<double>::infinity();
        for (const CircuitPool::FitBank& fit : fit_) {
            const double at_most = fit.ohm < pool_.equal_ohms().size() ? kwh[fit.ohm] : kwh.back();
            most = std::max(most, at_most - kwh_per_price_ * fit.price);
        }
        if (fit_.empty()) continue;
        push(set, {.value = most - kwh_per_price_ * price_of(array),
                   .stage = Stage::array,
                   .array = array});
    }
}

void CircuitLists::open_array(Set& set, std::size_t array) {
    if (pool_.is_dead(array)) return;
    const ArraySeason& season = pool_.task().energies->season(array);
    std::vector<double> kwh;
    kwh.reserve(pool_.ohms().size());
    for (const double ohm : pool_.ohms()) kwh.push_back(season.kwh(ohm, 0.0));
    const double beside = kwh_per_price_ * price_of(array);
    std::vector<FedBank>& fed = fed_[array];
    for (const CircuitPool::FitBank& fit : fit_) {
        fed.push_back(
            {.value = kwh[fit.ohm] - beside - kwh_per_price_ * fit.price, .bank = fit.bank});
    }
    std::stable_sort(fed.begin(), fed.end(),
                     [](const FedBank& a, const FedBank& b) { return a.value > b.value; });
    if (!fed.empty()) {
        push(set, {.value = fed.front().value, .stage = Stage::banks, .array = array});
    }
}

void CircuitLists::try_bank(Set& set, Lead lead) {
    const std::vector<FedBank>& fed = fed_.at(lead.array);
    const PlanChoice choice{.array = lead.array, .bank = fed[lead.place].bank};
    if (ListedCircuit* circuit = pool_.is_dead(lead.array) ? nullptr : pool_.screened(choice)) {
        push(set, {.value = std::min(value(*circuit), lead.value),
                   .stage = Stage::circuit,
                   .array = lead.array,
                   .place = lead.place,
                   .circuit = circuit});
    }
    if (++lead.place == fed.size() || pool_.is_dead(lead.array)) {
        fed_.erase(lead.array);
        return;
    }
    lead.value = fed[lead.place].value;
    push(set, lead);
}

}  // namespace heatmatch
