#pragma once

#include "heat_limits.hpp"

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "heatmatch/match/margins/heat_memory.hpp"

namespace heatmatch {

struct HeatMemory::Held {
  public:
    /// All inputs of the limits of any bank, except the bank.
    struct Common {
        FilledStore store{};
        std::vector<RunParts> runs{};
        std::vector<PlacedDevice> devices{};

        friend bool operator==(const Common&, const Common&) = default;
    };

    /// Kept results for these banks; empty for each that is not kept.
    [[nodiscard]] std::vector<std::optional<BankLimit>> find(const Common& common,
                                                             const std::vector<const Bank*>& banks);
    void keep(const Common& common, const std::vector<const Bank*>& banks,
              const std::vector<BankLimit>& made);

  private:
    /// One bank with its results.
    struct Kept {
        Bank bank{};
        BankLimit made{};
    };
    using Place = std::tuple<std::string, int, int>;
    static Place place_of(const Bank& bank) {
        return {bank.element.id, bank.hookup.series, bank.hookup.parallel};
    }

    std::mutex guard_{};
    Common common_{};
    std::map<Place, Kept> kept_{};
};

}  // namespace heatmatch
