#pragma once

#include "front.hpp"
#include "pairing.hpp"
#include "shortlist.hpp"

#include <deque>
#include <map>
#include <mutex>
#include <string>

namespace heatmatch {

/// Names of the margins that reject, each with a number; shared by all threads.
class ReasonNames {
  public:
    /// Number of that name; 0 for an empty one.
    [[nodiscard]] std::uint32_t number(const std::string& name) {
        if (name.empty()) return 0;
        const std::scoped_lock lock(guard_);
        for (std::size_t i = 0; i < names_.size(); ++i) {
            if (names_[i] == name) return static_cast<std::uint32_t>(i + 1);
        }
        names_.push_back(name);
        return static_cast<std::uint32_t>(names_.size());
    }
    [[nodiscard]] const std::string& name(std::uint32_t number) const { return names_[number - 1]; }

  private:
    std::deque<std::string> names_{};
    std::mutex guard_{};
};

/// Results of one thread; copies share the lists of the best.
struct Tally {
    BestPairings kept;
    BestPairings doubtful;  //!< kept after the others, if there is room
    BestPairings unpriced;  //!< with a budget, kept after both
    BestPairings rejected;
    Front front{};
    Shortlist shortlist{};
    std::vector<std::size_t> counts{};  //!< by number of the reason
    std::size_t evaluated = 0;
    std::size_t left_out = 0;     //!< pairings whose resistance is not fixed
    std::size_t above_volts = 0;  //!< pairings whose array exceeds the volts of the goals

    Tally(std::size_t top, std::size_t keep_rejected)
        : kept(top, &comes_first),
          doubtful(top, &comes_first),
          unpriced(top, &comes_first),
          rejected(keep_rejected, &larger_objective) {}

    [[nodiscard]] BestPairings& best(const Pairing& pairing) {
        if (pairing.unpriced) return unpriced;
        return pairing.doubtful ? doubtful : kept;
    }
    [[nodiscard]] const BestPairings& best(const Pairing& pairing) const {
        if (pairing.unpriced) return unpriced;
        return pairing.doubtful ? doubtful : kept;
    }

    /// The best of all, with doubtful ones after the others, and those after them of which the bill
    /// is not known to be within the budget.
    [[nodiscard]] std::vector<Pairing> sorted() const {
        std::vector<Pairing> all = kept.sorted();
        for (const BestPairings* more : {&doubtful, &unpriced}) {
            for (const Pairing& pairing : more->sorted()) {
                if (all.size() == kept.most()) break;
                all.push_back(pairing);
            }
        }
        return all;
    }

    void count(std::uint32_t reason, std::size_t pairings = 1) {
        if (counts.size() <= reason) counts.resize(reason + 1, 0);
        counts[reason] += pairings;
    }

    void add(const Tally& other) {
        kept.take(other.kept);
        doubtful.take(other.doubtful);
        unpriced.take(other.unpriced);
        rejected.take(other.rejected);
        for (const Pairing& pairing : other.front.sorted()) front.offer(pairing);
        shortlist.take(other.shortlist);
        if (counts.size() < other.counts.size()) counts.resize(other.counts.size(), 0);
        for (std::size_t i = 0; i < other.counts.size(); ++i) counts[i] += other.counts[i];
        evaluated += other.evaluated;
        left_out += other.left_out;
        above_volts += other.above_volts;
    }
};

}  // namespace heatmatch
