#pragma once

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <memory>
#include <mutex>
#include <tuple>
#include <vector>

#include "heatmatch/match/circuit/hookup.hpp"

namespace heatmatch {

/// One pairing in the screen: numbers and indices only.
struct Pairing {
    std::size_t group = 0;
    std::size_t bank = 0;
    Hookup panels{};
    double objective =
        0.0;  //!< energy over the season [kWh], or mean power over the conditions [W]
    double headroom = 1.0;
    double price = 0.0;  //!< of the whole bill, before that a lower bound; infinite if unknown
    int not_assessed = 0;
    int parts = 0;             //!< pieces on the whole bill, before that 0
    int like_it = 0;           //!< pairings of the same load that are folded under it
    bool doubtful = false;     //!< an unstated fact may make it a danger
    bool unpriced = false;     //!< a budget is stated, but the bill is not known
    bool settled = false;      //!< every margin that decides a recommendation is assessed
    bool below_touch = false;  //!< its voltage at the record low may be touched
    std::uint32_t reason = 0;  //!< index of the margin that rejects it; 0: none

    /// Total order of pairings, so that the result does not depend on the number of threads.
    [[nodiscard]] auto sequence() const {
        return std::tuple(group, panels.count(), -panels.series, bank);
    }
};

/// Steps of 1 % of objective: values in one step count as equal.
[[nodiscard]] inline double objective_step(double objective) {
    if (objective <= 0.0) return -std::numeric_limits<double>::infinity();
    static const double width = std::log(1.01);
    return std::floor(std::log(objective) / width + 1e-9);
}

/// Best first: pairings that no unstated fact can make a danger, then objective in steps of 1 %,
/// fewest margins not assessed, largest of the smallest headrooms, lowest price, then objective
/// itself.
[[nodiscard]] inline bool comes_first(const Pairing& a, const Pairing& b) {
    if (a.doubtful != b.doubtful) return b.doubtful;
    const double step_a = objective_step(a.objective);
    const double step_b = objective_step(b.objective);
    if (step_a != step_b) return step_a > step_b;
    if (a.not_assessed != b.not_assessed) return a.not_assessed < b.not_assessed;
    if (a.headroom != b.headroom) return a.headroom > b.headroom;
    if (a.price != b.price) return a.price < b.price;
    if (a.objective != b.objective) return a.objective > b.objective;
    return a.sequence() < b.sequence();
}

[[nodiscard]] inline bool larger_objective(const Pairing& a, const Pairing& b) {
    return a.objective != b.objective ? a.objective > b.objective : a.sequence() < b.sequence();
}

/// The best of a stream, in bounded memory. Copies in several threads share one list.
class BestPairings {
  public:
    using Before = bool (*)(const Pairing&, const Pairing&);
    BestPairings(std::size_t most, Before before)
        : most_(most), before_(before), filled_(std::make_shared<Filled>()) {
        if (most == 0) filled_->threshold = std::numeric_limits<double>::infinity();
    }

    /// Whether a pairing of that objective may still enter: checked first, because it is one
    /// comparison.
    [[nodiscard]] bool may_enter(double objective) const {
        return objective >= filled_->threshold.load(std::memory_order_relaxed);
    }

    void offer(const Pairing& pairing) {
        if (most_ == 0) return;
        const std::scoped_lock lock(filled_->guard);
        std::vector<Pairing>& heap = filled_->heap;
        if (heap.size() == most_) {
            if (!before_(pairing, heap.front())) return;
            std::pop_heap(heap.begin(), heap.end(), before_);
            heap.back() = pairing;
        } else {
            heap.push_back(pairing);
        }
        std::push_heap(heap.begin(), heap.end(), before_);
        // A pairing in the same step as the last one may precede it by its other numbers.
        constexpr double one_step = 1.0 / 1.011;
        if (heap.size() == most_) filled_->threshold = heap.front().objective * one_step;
    }

    /// Adds the pairings of another list.
    void take(const BestPairings& other) {
        if (filled_ == other.filled_) return;
        for (const Pairing& pairing : other.sorted()) offer(pairing);
    }

    [[nodiscard]] std::size_t most() const { return most_; }
    [[nodiscard]] std::vector<Pairing> sorted() const {
        const std::scoped_lock lock(filled_->guard);
        std::vector<Pairing> all = filled_->heap;
        std::sort(all.begin(), all.end(), before_);
        return all;
    }

  private:
    struct Filled {
        std::mutex guard{};
        std::vector<Pairing> heap{};
        std::atomic<double> threshold{0.0};
    };

    std::size_t most_;
    Before before_;
    std::shared_ptr<Filled> filled_;
};

}  // namespace heatmatch
