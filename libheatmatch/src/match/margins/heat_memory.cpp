#include "heat_memory_held.hpp"

namespace heatmatch {

HeatMemory::HeatMemory() : held_(std::make_unique<Held>()) {}

HeatMemory::~HeatMemory() = default;

std::vector<std::optional<BankLimit>> HeatMemory::Held::find(
    const Common& common, const std::vector<const Bank*>& banks) {
    const std::scoped_lock lock(guard_);
    std::vector<std::optional<BankLimit>> found(banks.size());
    if (!(common_ == common)) return found;
    for (std::size_t i = 0; i < banks.size(); ++i) {
        const auto at = kept_.find(place_of(*banks[i]));
        if (at != kept_.end() && at->second.bank == *banks[i]) found[i] = at->second.made;
    }
    return found;
}

void HeatMemory::Held::keep(const Common& common, const std::vector<const Bank*>& banks,
                            const std::vector<BankLimit>& made) {
    constexpr std::size_t most = 20000;
    const std::scoped_lock lock(guard_);
    if (!(common_ == common) || kept_.size() + banks.size() > most) kept_.clear();
    common_ = common;
    for (std::size_t i = 0; i < banks.size() && kept_.size() < most; ++i) {
        kept_.insert_or_assign(place_of(*banks[i]), Kept{*banks[i], made[i]});
    }
}

}  // namespace heatmatch
