#include "heat_limits.hpp"

#include "heat_memory_held.hpp"

#include <algorithm>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/match/margins/careful_case.hpp"

namespace heatmatch {

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
    parallel_for(
        wanted.size(), worker_count(threads, wanted.size()),
        [&](std::size_t job, std::size_t, const Pulse&) {
            const Bank& bank = *banks[wanted[job]];
            BankLimit& limit = limits[wanted[job]];
            limit.heat =
                bank_heat(store, bank.element, bank.sheath, bank.alloy, bank.hookup.count());
            auto unsourced = std::make_shared<BankHeat>(*limit.heat);
            unsourced->assumed.clear();
            limit.unsourced = std::move(unsourced);
            const Circuit alone{
                .bank = bank, .runs = runs, .devices = devices, .heat = limit.unsourced};
            limit.limit = heat_limit(alone);
            limit.careful_w = limit.limit.element_w;
            const CarefulCase careful = careful_case(alone, Site{});
            if (!careful.facts.empty()) {
                limit.careful_w = std::min(limit.careful_w, heat_limit(careful.circuit).element_w);
            }
            limit.table = std::make_shared<HeatTable>();
        });
    if (memory != nullptr) memory->held().keep(common, banks, limits);
    return limits;
}

}  // namespace heatmatch
