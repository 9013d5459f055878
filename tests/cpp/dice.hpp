#pragma once

#include <cstddef>
#include <cstdint>

/// Random draws that every compiler makes alike (splitmix64), so that a failing seed fails
/// anywhere.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    /// Both ends included.
    [[nodiscard]] int from(int low, int high) {
        const auto width = static_cast<std::uint64_t>(high - low) + 1;
        return low + static_cast<int>(next() % width);
    }
    [[nodiscard]] double between(double low, double high) {
        return low + (high - low) * from(0, 1000) / 1000.0;
    }
    [[nodiscard]] bool coin() { return from(0, 1) == 1; }
    template <class List>
    [[nodiscard]] const auto& one_of(const List& list) {
        return list[static_cast<std::size_t>(from(0, static_cast<int>(list.size()) - 1))];
    }

  private:
    std::uint64_t next() {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t mixed = state_;
        mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9U;
        mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
        return mixed ^ (mixed >> 31U);
    }

    std::uint64_t state_;
};
