#include "band_matrix.hpp"

#include <algorithm>

namespace heatmatch {

void factor_band(std::span<double> matrix, std::size_t rows, std::size_t width) {
    const std::size_t stride = width + 1;
    for (std::size_t j = 0; j < rows; ++j) {
        double* pivot = matrix.data() + j * stride;
        const std::size_t reach = std::min(width, rows - 1 - j);
        const double inverse = 1.0 / pivot[0];
        for (std::size_t i = 1; i <= reach; ++i) {
            const double share = pivot[i] * inverse;
            double* below = pivot + i * stride;
            for (std::size_t k = i; k <= reach; ++k) below[k - i] -= share * pivot[k];
        }
        for (std::size_t i = 1; i <= reach; ++i) pivot[i] *= inverse;
        pivot[0] = inverse;  // of D, for the solutions to come
    }
}

void solve_band(std::span<const double> factored, std::size_t width, std::span<double> x) {
    const std::size_t stride = width + 1;
    const std::size_t rows = x.size();
    for (std::size_t j = 0; j < rows; ++j) {
        const double* pivot = factored.data() + j * stride;
        const std::size_t reach = std::min(width, rows - 1 - j);
        const double here = x[j];
        for (std::size_t i = 1; i <= reach; ++i) x[j + i] -= pivot[i] * here;
        x[j] = here * pivot[0];
    }
    for (std::size_t j = rows; j-- > 0;) {
        const double* pivot = factored.data() + j * stride;
        const std::size_t reach = std::min(width, rows - 1 - j);
        double sum = x[j];
        // The nearest, last known, comes last: rows then overlap in the processor.
        for (std::size_t i = reach; i > 0; --i) sum -= pivot[i] * x[j + i];
        x[j] = sum;
    }
}

}  // namespace heatmatch
