#include "heat_limits.hpp"

#include "heat_memory_held.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/match/margins/careful_case.hpp"

namespace heatmatch {

namespace {

constexpr double unlimited_w = std::numeric_limits<double>::infinity();

/// Whether the sheath withstands that power of an element; false where it is not known.
bool stands(const BankHeat& heat, double element_w) {
    return std::isfinite(element_w) && heat.known() && heat.sheath &&
           heat.judged_at(element_w).sheath_c <= heat.sheath->hard_limit_c;
}

BankLimit limit_of(const std::shared_ptr<const FilledStore>& store, const Bank& bank,
                   const std::vector<RunParts>& runs, const std::vector<PlacedDevice>& devices) {
    BankLimit limit;
    limit.heat = bank_heat(store, bank.element, bank.sheath, bank.alloy, bank.hookup.count());
    auto unsourced = std::make_shared<BankHeat>(*limit.heat);
    unsourced->assumed.clear();
    limit.unsourced = std::move(unsourced);
    const Circuit alone{.bank = bank, .runs = runs, .devices = devices, .heat = limit.unsourced};
    limit.limit = heat_limit(alone);
    limit.careful_w = limit.limit.element_w;
    limit.lasting_w = limit.heat->largest_lasting_w().value_or(unlimited_w);
    limit.careful_lasting_w = limit.lasting_w;
    const CarefulCase careful = careful_case(alone, Site{});
    if (!careful.facts.empty()) {
        limit.careful_w = heat_limit(careful.circuit, limit.careful_w).element_w;
        const BankHeat& hotter = *careful.circuit.heat;
        if (!stands(hotter, limit.lasting_w)) {
            limit.careful_lasting_w =
                std::min(limit.lasting_w, hotter.largest_lasting_w().value_or(unlimited_w));
        }
    }
    limit.table = std::make_shared<HeatTable>();
    return limit;
}

/// The remaining branches mostly equal another bank of the same element, which is already computed.
void add_survivors(const std::shared_ptr<const FilledStore>& store,
                   const std::vector<const Bank*>& banks, const std::vector<std::size_t>& wanted,
                   std::vector<BankLimit>& limits) {
    struct Left {
        std::shared_ptr<const BankHeat> heat{};
        double lasting_w = unlimited_w;
        double careful_w = unlimited_w;
    };
    std::map<std::pair<std::string_view, int>, Left> made;
    for (std::size_t i = 0; i < banks.size(); ++i) {
        const BankLimit& limit = limits[i];
        made.try_emplace({banks[i]->element.id, banks[i]->hookup.count()},
                         Left{limit.unsourced, limit.lasting_w, limit.careful_lasting_w});
    }
    for (const std::size_t index : wanted) {
        const Bank& bank = *banks[index];
        if (bank.hookup.parallel < 2) continue;
        Bank left = bank;
        left.hookup = bank.hookup_left();
        const auto [at, is_new] = made.try_emplace({bank.element.id, left.hookup.count()});
        if (is_new) {
            const BankLimit limit = limit_of(store, left, {}, {});
            at->second = {limit.unsourced, limit.lasting_w, limit.careful_lasting_w};
        }
        limits[index].survivors = at->second.heat;
        limits[index].survivor_w = at->second.lasting_w;
        limits[index].careful_survivor_w = at->second.careful_w;
    }
}

}  // namespace

std::vector<BankLimit> heat_limits(std::shared_ptr<const FilledStore> store,
                                   const std::vector<const Bank*>& banks,
                                   const std::vector<RunParts>& runs,
                                   const std::vector<PlacedDevice>& devices, std::size_t threads,
                                   HeatMemory* memory) {
    std::vector<BankLimit> limits(banks.size());
    if (!store) {
        for (BankLimit& limit : limits) limit.table = std::make_shared<HeatTable>();
        return limits;
    }
    const HeatMemory::Held::Common common{.store = *store, .runs = runs, .devices = devices};
    std::vector<std::optional<BankLimit>> found(banks.size());
    if (memory != nullptr) found = memory->held().find(common, banks);
    std::vector<std::size_t> wanted;
    for (std::size_t i = 0; i < banks.size(); ++i) {
        if (found[i]) {
            limits[i] = *found[i];
        } else {
            wanted.push_back(i);
        }
    }
    if (wanted.empty()) return limits;
    parallel_for(wanted.size(), worker_count(threads, wanted.size()),
                 [&](std::size_t job, std::size_t, const Pulse&) {
                     limits[wanted[job]] = limit_of(store, *banks[wanted[job]], runs, devices);
                 });
    add_survivors(store, banks, wanted, limits);
    if (memory != nullptr) memory->held().keep(common, banks, limits);
    return limits;
}

}  // namespace heatmatch
