#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <tuple>
#include <vector>

#include "heatmatch/match/circuit/hookup.hpp"

namespace heatmatch {

/// One pairing as the screen sees it: numbers and indices only.
struct Pairing {
    std::size_t group = 0;
    std::size_t bank = 0;
    Hookup panels{};
    double merit = 0.0;  //!< energy over the season [kWh], or mean power over the conditions [W]
    double headroom = 1.0;
    double price = 0.0;  //!< infinite if unknown
    int not_assessed = 0;
    std::uint32_t reason = 0;  //!< index of the margin that rejects it; 0: none

    /// Total order of pairings, so that the number of threads changes nothing.
    [[nodiscard]] auto sequence() const {
        return std::tuple(group, panels.count(), -panels.series, bank);
    }
};

/// Steps of 1 % of merit: what lies in one step counts as equal.
[[nodiscard]] inline double merit_step(double merit) {
    if (merit <= 0.0) return -std::numeric_limits<double>::infinity();
    static const double width = std::log(1.01);
    return std::floor(std::log(merit) / width + 1e-9);
}

/// Best first: merit in steps of 1 %, fewest margins not assessed, largest of the smallest
/// headrooms, lowest price, then merit itself.
[[nodiscard]] inline bool comes_first(const Pairing& a, const Pairing& b) {
    const double step_a = merit_step(a.merit);
    const double step_b = merit_step(b.merit);
    if (step_a != step_b) return step_a > step_b;
    if (a.not_assessed != b.not_assessed) return a.not_assessed < b.not_assessed;
    if (a.headroom != b.headroom) return a.headroom > b.headroom;
    if (a.price != b.price) return a.price < b.price;
    if (a.merit != b.merit) return a.merit > b.merit;
    return a.sequence() < b.sequence();
}

[[nodiscard]] inline bool more_merit(const Pairing& a, const Pairing& b) {
    return a.merit != b.merit ? a.merit > b.merit : a.sequence() < b.sequence();
}

/// The best of a stream, in bounded memory.
class BestPairings {
  public:
    using Before = bool (*)(const Pairing&, const Pairing&);
    BestPairings(std::size_t most, Before before) : most_(most), before_(before) {}

    /// Whether a pairing of that merit may still enter: asked first, for it costs a comparison.
    [[nodiscard]] bool may_enter(double merit) const { return merit >= threshold_; }

    void offer(const Pairing& pairing) {
        if (most_ == 0) return;
        if (heap_.size() == most_) {
            if (!before_(pairing, heap_.front())) return;
            std::pop_heap(heap_.begin(), heap_.end(), before_);
            heap_.back() = pairing;
        } else {
            heap_.push_back(pairing);
        }
        std::push_heap(heap_.begin(), heap_.end(), before_);
        // A pairing of the last one's step may still come first by its other numbers.
        constexpr double one_step = 1.0 / 1.011;
        if (heap_.size() == most_) threshold_ = heap_.front().merit * one_step;
    }

    [[nodiscard]] const std::vector<Pairing>& unsorted() const { return heap_; }
    [[nodiscard]] std::vector<Pairing> sorted() const {
        std::vector<Pairing> all = heap_;
        std::sort(all.begin(), all.end(), before_);
        return all;
    }

  private:
    std::size_t most_;
    Before before_;
    std::vector<Pairing> heap_{};
    double threshold_ = most_ == 0 ? std::numeric_limits<double>::infinity() : 0.0;
};

}  // namespace heatmatch
