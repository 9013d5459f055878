#pragma once

#include <cstddef>
#include <span>

namespace heatmatch {

/// A symmetric positive matrix of cells in levels, each coupled to its neighbors in its level and
/// directly above and below. Solved block by block, by the full inverse of each level's block,
/// whose products are faster than the recurrences of a band matrix. Works on memory owned by the
/// caller.
class LevelMatrix {
  public:
    LevelMatrix(std::span<double> numbers, std::size_t across, std::size_t high);
    [[nodiscard]] static std::size_t size(std::size_t across, std::size_t high) {
        return (across * across + across) * high + 2 * across;
    }

    void clear();
    /// Adds to the diagonal of a cell.
    void add(std::size_t cell, double value);
    /// Adds a conductance between a cell and the next one outward in its level.
    void link_outwards(std::size_t cell, double value);
    /// The same between a cell and the one above.
    void link_upwards(std::size_t cell, double value);
    /// Factors the matrix after all additions.
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
