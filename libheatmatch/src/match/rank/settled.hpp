#pragma once

#include <array>
#include <atomic>

#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// Whether the margins of a bank in its store, and of its terminals, that decide a recommendation
/// can be assessed; independent of power and of the array.
[[nodiscard]] bool settled_bank(const Circuit& circuit, const Site& site);

/// The same, computed once by any thread.
class SettledBank {
  public:
    template <class Look>
    [[nodiscard]] bool read(const Look& look) {
        int value = known_.load(std::memory_order_relaxed);
        if (value < 0) {
            value = look() ? 1 : 0;
            known_.store(value, std::memory_order_relaxed);
        }
        return value == 1;
    }

  private:
    std::atomic<int> known_{-1};  // below zero until computed
};

}  // namespace heatmatch
