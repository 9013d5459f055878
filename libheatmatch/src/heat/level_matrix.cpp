#include "level_matrix.hpp"

#include <algorithm>

namespace heatmatch {

namespace {

/// Gauss-Jordan in place; a symmetric positive matrix needs no pivoting.
void invert(double* matrix, std::size_t n) {
    for (std::size_t p = 0; p < n; ++p) {
        double* pivot = matrix + p * n;
        const double inverse = 1.0 / pivot[p];
        pivot[p] = 1.0;
        for (std::size_t j = 0; j < n; ++j) pivot[j] *= inverse;
        for (std::size_t i = 0; i < n; ++i) {
            if (i == p) continue;
            double* row = matrix + i * n;
            const double share = row[p];
            row[p] = 0.0;
            for (std::size_t j = 0; j < n; ++j) row[j] -= share * pivot[j];
        }
    }
}

/// out = symmetric matrix times v.
void multiply(const double* matrix, std::size_t n, const double* v, double* out) {
    std::fill(out, out + n, 0.0);
    for (std::size_t j = 0; j < n; ++j) {
        const double* row = matrix + j * n;
        const double by = v[j];
        for (std::size_t i = 0; i < n; ++i) out[i] += by * row[i];
    }
}

}  // namespace

LevelMatrix::LevelMatrix(std::span<double> numbers, std::size_t across, std::size_t high)
    : across_(across),
      high_(high),
      numbers_(numbers),
      blocks_(numbers.data()),
      upwards_(blocks_ + across * across * high),
      work_(upwards_ + across * high),
      lifted_(work_ + across) {}

void LevelMatrix::clear() {
    std::fill(numbers_.begin(), numbers_.end(), 0.0);
}

void LevelMatrix::add(std::size_t cell, double value) {
    const std::size_t i = cell % across_;
    block(cell / across_)[i * across_ + i] += value;
}

void LevelMatrix::link_outwards(std::size_t cell, double value) {
    const std::size_t i = cell % across_;
    double* here = block(cell / across_);
    add(cell, value);
    add(cell + 1, value);
    here[i * across_ + i + 1] -= value;
    here[(i + 1) * across_ + i] -= value;
}

void LevelMatrix::link_upwards(std::size_t cell, double value) {
    add(cell, value);
    add(cell + across_, value);
    upwards_[cell] += value;
}

void LevelMatrix::factor() {
    for (std::size_t k = 0; k < high_; ++k) {
        double* here = block(k);
        if (k > 0) {
            const double* below = block(k - 1);
            const double* up = upwards_ + (k - 1) * across_;
            for (std::size_t i = 0; i < across_; ++i) {
                for (std::size_t j = 0; j < across_; ++j) {
                    here[i * across_ + j] -= up[i] * below[i * across_ + j] * up[j];
                }
            }
        }
        invert(here, across_);
    }
}

void LevelMatrix::solve(std::span<double> x) const {
    const std::size_t n = across_;
    for (std::size_t k = 0; k < high_; ++k) {
        double* here = x.data() + k * n;
        const double* up = upwards_ + k * n;
        multiply(block(k), n, here, work_);
        std::copy(work_, work_ + n, here);
        if (k + 1 == high_) break;
        for (std::size_t i = 0; i < n; ++i) here[n + i] += up[i] * work_[i];
    }
    for (std::size_t k = high_ - 1; k-- > 0;) {
        double* here = x.data() + k * n;
        const double* up = upwards_ + k * n;
        for (std::size_t i = 0; i < n; ++i) lifted_[i] = up[i] * here[n + i];
        multiply(block(k), n, lifted_, work_);
        for (std::size_t i = 0; i < n; ++i) here[i] += work_[i];
    }
}

}  // namespace heatmatch
