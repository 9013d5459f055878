#include "heat_limits.hpp"

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/match/margins/device_margins.hpp"

namespace heatmatch {

namespace {

/// What all banks at hand have in common.
struct Common {
    FilledStore store{};
    std::vector<RunParts> runs{};
    bool limited = false;

    [[nodiscard]] bool same(const FilledStore& other) const {
        return store.store == other.store && store.medium == other.medium &&
               store.charge_hours == other.charge_hours && store.air_c == other.air_c &&
               store.hottest_air_c == other.hottest_air_c;
    }
    [[nodiscard]] bool same(const std::vector<RunParts>& other) const {
        if (runs.size() != other.size()) return false;
        for (std::size_t i = 0; i < runs.size(); ++i) {
            if (runs[i].run != other[i].run || runs[i].wire != other[i].wire ||
                runs[i].insulation != other[i].insulation ||
                runs[i].connector != other[i].connector) {
                return false;
            }
        }
        return true;
    }
};

/// One bank at hand, with what it was made of.
struct Kept {
    Element element{};
    std::optional<Sheath> sheath{};
    std::optional<Alloy> alloy{};
    double each_ohm = 0.0;
    BankLimit made{};

    [[nodiscard]] bool of(const Bank& bank) const {
        return element == bank.element && sheath == bank.sheath && alloy == bank.alloy &&
               each_ohm == bank.each.typical_ohm;
    }
};

class AtHand {
  public:
    std::vector<std::optional<BankLimit>> find(const Common& common,
                                               const std::vector<const Bank*>& banks) {
        const std::scoped_lock lock(mutex_);
        std::vector<std::optional<BankLimit>> found(banks.size());
        if (!(common_.limited == common.limited && common_.same(common.store) &&
              common_.same(common.runs))) {
            return found;
        }
        for (std::size_t i = 0; i < banks.size(); ++i) {
            const auto at = kept_.find(key_of(*banks[i]));
            if (at != kept_.end() && at->second.of(*banks[i])) found[i] = at->second.made;
        }
        return found;
    }

    void keep(const Common& common, const std::vector<const Bank*>& banks,
              const std::vector<BankLimit>& made) {
        constexpr std::size_t most = 20000;
        const std::scoped_lock lock(mutex_);
        const bool same = common_.limited == common.limited && common_.same(common.store) &&
                          common_.same(common.runs);
        if (!same || kept_.size() + banks.size() > most) kept_.clear();
        common_ = common;
        for (std::size_t i = 0; i < banks.size() && kept_.size() < most; ++i) {
            const Bank& bank = *banks[i];
            kept_[key_of(bank)] = {bank.element, bank.sheath, bank.alloy, bank.each.typical_ohm,
                                   made[i]};
        }
    }

  private:
    using Key = std::tuple<std::string, int, int>;
    static Key key_of(const Bank& bank) {
        return {bank.element.id, bank.hookup.series, bank.hookup.parallel};
    }

    std::mutex mutex_{};
    Common common_{};
    std::map<Key, Kept> kept_{};
};

AtHand& at_hand() {
    static AtHand kept;
    return kept;
}

}  // namespace

std::vector<BankLimit> heat_limits(std::shared_ptr<const FilledStore> store,
                                   const std::vector<const Bank*>& banks,
                                   const std::vector<RunParts>& runs,
                                   const std::vector<PlacedDevice>& devices, const Site& site,
                                   std::size_t threads) {
    std::vector<BankLimit> limits(banks.size());
    if (!store) return limits;
    const Common common{.store = *store, .runs = runs, .limited = has_independent_limit(devices)};
    const auto found = at_hand().find(common, banks);
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
            const Circuit alone{.bank = bank, .runs = runs, .devices = devices, .heat = limit.heat};
            limit.limit = heat_limit(alone, site);
            limit.table = std::make_shared<HeatTable>();
        });
    at_hand().keep(common, banks, limits);
    return limits;
}

}  // namespace heatmatch
