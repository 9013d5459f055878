#pragma once

#include <cstddef>
#include <span>

namespace heatmatch {

/// A symmetric positive matrix of cells that lie level by level, each linked to its neighbours in
/// its level and to those right below and above: block by block, by the full inverse of each
/// level's block, whose products run faster than the recurrences of a band.
/// Works on numbers that someone else keeps.
class LevelMatrix {
  public:
    LevelMatrix(std::span<double> numbers, std::size_t across, std::size_t high);
    [[nodiscard]] static std::size_t size(std::size_t across, std::size_t high) {
        return (across * across + across) * high + 2 * across;
    }

    void clear();
    /// Adds to the diagonal of a cell.
    void add(std::size_t cell, double value);
    /// Adds a conductance between a cell and the next one out in its level.
    void link_outwards(std::size_t cell, double value);
    /// The same between a cell and the one above.
    void link_upwards(std::size_t cell, double value);
    /// Once all is added: makes ready to solve.
    void factor();
    /// Solves for a right-hand side in place.
    void solve(std::span<double> x) const;

  private:
    [[nodiscard]] double* block(std::size_t level) const {
        return blocks_ + level * across_ * across_;
    }

    std::size_t across_ = 0;
    std::size_t high_ = 0;
    std::span<double> numbers_{};
    double* blocks_ = nullptr;   //!< by level, across by across
    double* upwards_ = nullptr;  //!< conductance from a cell to the one above
    double* work_ = nullptr;
    double* lifted_ = nullptr;
};

}  // namespace heatmatch
