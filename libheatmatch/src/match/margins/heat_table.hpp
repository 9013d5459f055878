#pragma once

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstddef>
#include <limits>

namespace heatmatch {

/// Headroom of a bank's heat over the largest power share of one element, computed on demand by any
/// thread. It is a bound, so that the exact margins are rarely needed.
class HeatTable {
  public:
    HeatTable() {
        for (auto& node : nodes_) node.store(std::numeric_limits<double>::quiet_NaN());
    }

    /// An upper bound of the headroom at that share; `exact(share)` computes it. `steps_down` where
    /// it may drop abruptly, as where a damp bed begins to count as dry.
    template <class Exact>
    [[nodiscard]] double at_most(double share, const Exact& exact, bool steps_down = false) {
        const double place = std::clamp(share, 0.0, 1.0) * steps;
        const auto below = std::min(static_cast<std::size_t>(place), steps - 1);
        const double low = node(below, exact);
        if (steps_down) return low;
        const double high = node(below + 1, exact);
        // Between two shares the headroom is below its chord, except where two margins cross.
        constexpr double crossing = 0.005;
        return low + (high - low) * (place - static_cast<double>(below)) + crossing;
    }

    /// Number of margins of the bank that lack data, with the temperature of its terminals known or
    /// not; `count()` computes it once.
    template <class Count>
    [[nodiscard]] int lacking(bool terminal_known, const Count& count) {
        std::atomic<int>& kept = lacking_[terminal_known ? 1 : 0];
        int value = kept.load(std::memory_order_relaxed);
        if (value >= 0) return value;
        value = count();
        kept.store(value, std::memory_order_relaxed);
        return value;
    }

    /// Whether an unstated fact may make the bank a danger at any power, also computed once.
    template <class Look>
    [[nodiscard]] bool doubtful(bool terminal_known, const Look& look) {
        std::atomic<int>& kept = doubtful_[terminal_known ? 1 : 0];
        int value = kept.load(std::memory_order_relaxed);
        if (value < 0) {
            value = look() ? 1 : 0;
            kept.store(value, std::memory_order_relaxed);
        }
        return value == 1;
    }

  private:
    static constexpr std::size_t steps = 32;

    template <class Exact>
    double node(std::size_t index, const Exact& exact) {
        double value = nodes_[index].load(std::memory_order_relaxed);
        if (!std::isnan(value)) return value;
        value = exact(static_cast<double>(index) / steps);
        nodes_[index].store(value, std::memory_order_relaxed);
        return value;
    }

    std::array<std::atomic<double>, steps + 1> nodes_{};  // NaN until computed
    std::array<std::atomic<int>, 2> lacking_{-1, -1};     // below zero until computed
    std::array<std::atomic<int>, 2> doubtful_{-1, -1};    // same
};

}  // namespace heatmatch
