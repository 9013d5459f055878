#pragma once

#include "pairing.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace heatmatch {

/// Steps of one percentage point of headroom: values in one step count as equal.
[[nodiscard]] inline int headroom_step(double headroom) {
    const double percent = headroom * 100.0 + 1e-9;
    if (!(percent > 0.0)) return 0;
    return percent < 100.0 ? static_cast<int>(percent) : 100;
}

/// Pareto-optimal pairings in objective, step of headroom and price, updated one by one. Most
/// pairings are rejected by one lookup in a table of the largest objective with at least that
/// headroom and at most that price, in eighths of an octave of price.
class Front {
  public:
    /// Whether a pairing with at most these values may be Pareto-optimal; never a false no.
    [[nodiscard]] bool may_enter(double objective, double headroom, double price) const {
        const std::size_t level = level_below(price);
        return level == 0 || objective >= most_[cell(level - 1, headroom_step(headroom))];
    }

    /// The same by comparing every member: slower, and rejects all that one of them beats.
    [[nodiscard]] bool beaten(double objective, double headroom, double price) const {
        const int step = headroom_step(headroom);
        return std::any_of(members_.begin(), members_.end(), [&](const Pairing& other) {
            return other.objective > objective && other.price <= price &&
                   headroom_step(other.headroom) >= step;
        });
    }

    void offer(const Pairing& pairing) {
        const auto equals_or_beats = [](const Pairing& a, const Pairing& b) {
            return a.objective >= b.objective &&
                   headroom_step(a.headroom) >= headroom_step(b.headroom) && a.price <= b.price;
        };
        for (const Pairing& other : members_) {
            if (!equals_or_beats(other, pairing)) continue;
            const bool same = equals_or_beats(pairing, other);
            if (!same || other.sequence() < pairing.sequence()) return;
        }
        std::erase_if(members_,
                      [&](const Pairing& other) { return equals_or_beats(pairing, other); });
        members_.push_back(pairing);
        const int top = headroom_step(pairing.headroom);
        for (std::size_t level = level_above(pairing.price); level < level_count; ++level) {
            for (int step = 0; step <= top; ++step) {
                double& most = most_[cell(level, step)];
                most = std::max(most, pairing.objective);
            }
        }
    }

    /// By decreasing objective.
    [[nodiscard]] std::vector<Pairing> sorted() const {
        std::vector<Pairing> all = members_;
        std::sort(all.begin(), all.end(), larger_objective);
        return all;
    }

  private:
    static constexpr std::uint64_t lowest_part = 0x3fd0000000000000ULL >> 49U;  // 0.25
    static constexpr std::size_t parts = 176;  // up to some millions
    /// Level i contains prices up to the i-th edge: none, eighths of an octave from 0.25, any.
    static constexpr std::size_t level_count = parts + 2;
    static constexpr std::size_t steps = 101;

    static std::size_t cell(std::size_t level, int step) {
        return level * steps + static_cast<std::size_t>(step);
    }
    /// Eighth of an octave above 0.25 of a price.
    static std::size_t part_of(double price) {
        return (std::bit_cast<std::uint64_t>(price) >> 49U) - lowest_part;
    }
    /// Number of levels whose edge is at most that price.
    static std::size_t level_below(double price) {
        if (!(price >= 0.25)) return price >= 0.0 ? 1 : 0;
        if (std::isinf(price)) return level_count;
        return 2 + std::min(part_of(price), parts - 1);
    }
    /// First level whose edge is at least that price.
    static std::size_t level_above(double price) {
        if (price <= 0.0) return 0;
        if (price < 0.25) return 1;
        const std::size_t part = part_of(price);
        if (part >= parts) return level_count - 1;
        constexpr std::uint64_t below_parts = (1ULL << 49U) - 1;
        const bool on_edge = (std::bit_cast<std::uint64_t>(price) & below_parts) == 0;
        return on_edge ? part + 1 : part + 2;
    }

    std::vector<Pairing> members_{};
    std::vector<double> most_ = std::vector<double>(level_count * steps, -1.0);
};

}  // namespace heatmatch
