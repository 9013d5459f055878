#pragma once

#include "front.hpp"
#include "pairing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

/// Headroom above this gives a recommendation no further advantage.
inline constexpr double enough_headroom = 0.30;
/// Steps of 0.05 of headroom up to that: values in one step count as equal.
[[nodiscard]] inline int recommended_step(double headroom) {
    constexpr double width = 0.05;
    const double counted = std::clamp(headroom, 0.0, enough_headroom);
    return static_cast<int>(counted / width + 1e-9);
}
/// Prices that are shown alike are equal.
[[nodiscard]] inline double hundredths(double price) {
    return std::round(100.0 * price);
}

/// The order of the recommendation: headroom in those steps, then the smaller bill, fewer parts,
/// more heat.
[[nodiscard]] bool recommended_before(const Pairing& a, const Pairing& b);
[[nodiscard]] bool most_heat_before(const Pairing& a, const Pairing& b);
[[nodiscard]] bool least_money_before(const Pairing& a, const Pairing& b);
[[nodiscard]] bool coolest_before(const Pairing& a, const Pairing& b);

/// Of a stream of pairings, those that may turn out to come first among all with at least a share
/// of the largest objective. Which objective is the largest is known at the end only, so those are
/// kept that no other one beats both in objective and in order.
class BestOfStrong {
  public:
    using Before = bool (*)(const Pairing&, const Pairing&);
    BestOfStrong(double share, Before before) : share_(share), before_(before) {}

    /// Whether a pairing with at best these numbers may be kept; never a false no.
    [[nodiscard]] bool may_enter(const Pairing& at_best) const {
        if (kept_.empty()) return true;
        if (at_best.objective < share_ * most()) return false;
        return std::none_of(kept_.begin(), kept_.end(), [&](const Pairing& other) {
            return other.objective >= at_best.objective && before_(other, at_best);
        });
    }

    void offer(const Pairing& pairing) {
        if (!may_enter(pairing)) return;
        std::erase_if(kept_, [&](const Pairing& other) {
            return other.objective <= pairing.objective && before_(pairing, other);
        });
        const auto at = std::find_if(kept_.begin(), kept_.end(), [&pairing](const Pairing& other) {
            return other.objective < pairing.objective;
        });
        kept_.insert(at, pairing);
        std::erase_if(kept_,
                      [&](const Pairing& other) { return other.objective < share_ * most(); });
    }

    void take(const BestOfStrong& other) {
        for (const Pairing& pairing : other.kept_) offer(pairing);
    }

    [[nodiscard]] bool empty() const { return kept_.empty(); }
    /// The first; null if there is none.
    [[nodiscard]] const Pairing* best() const { return kept_.empty() ? nullptr : &kept_.back(); }

  private:
    [[nodiscard]] double most() const { return kept_.front().objective; }

    double share_;
    Before before_;
    std::vector<Pairing> kept_{};  //!< by falling objective, each one before those with more
};

/// The pairings that a ranking may recommend, or name as an alternative.
class Shortlist {
  public:
    /// Whether a pairing with at best these numbers may be on it; never a false no. `doubtful`
    /// where an unstated fact is known to make it a danger.
    [[nodiscard]] bool may_enter(const Pairing& at_best) const;
    /// A pairing without a likely danger.
    void offer(const Pairing& pairing);
    void take(const Shortlist& other);

    [[nodiscard]] bool empty() const { return list().recommended.empty(); }
    /// Null if there is none.
    [[nodiscard]] const Pairing* recommended() const { return list().recommended.best(); }
    [[nodiscard]] const Pairing* alternative(AlternativeKind kind) const {
        return list().others[static_cast<std::size_t>(kind)].best();
    }

  private:
    struct List {
        BestOfStrong recommended{0.95, &recommended_before};
        std::array<BestOfStrong, alternative_words.size()> others{
            BestOfStrong{1.0, &most_heat_before}, BestOfStrong{0.5, &least_money_before},
            BestOfStrong{0.95, &recommended_before}, BestOfStrong{0.5, &coolest_before},
            BestOfStrong{0.95, &recommended_before}};

        [[nodiscard]] bool may_enter(const Pairing& at_best) const;
        void offer(const Pairing& pairing);
    };
    [[nodiscard]] const List& list() const {
        return clear_.recommended.empty() ? doubtful_ : clear_;
    }

    List clear_{};
    List doubtful_{};  //!< counts only where nothing is clear
};

}  // namespace heatmatch
