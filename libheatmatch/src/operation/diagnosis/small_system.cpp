#include "small_system.hpp"

#include <cmath>
#include <cstddef>
#include <utility>

namespace heatmatch {

bool solve_small(SmallMatrix a, std::vector<double> b, std::vector<double>& x) {
    const std::size_t n = b.size();
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t pivot = k;
        for (std::size_t i = k + 1; i < n; ++i) {
            if (std::fabs(a[i][k]) > std::fabs(a[pivot][k])) pivot = i;
        }
        if (std::fabs(a[pivot][k]) < 1e-14) return false;
        std::swap(a[k], a[pivot]);
        std::swap(b[k], b[pivot]);
        for (std::size_t i = k + 1; i < n; ++i) {
            const double factor = a[i][k] / a[k][k];
            for (std::size_t j = k; j < n; ++j) a[i][j] -= factor * a[k][j];
            b[i] -= factor * b[k];
        }
    }
    x.assign(n, 0.0);
    for (std::size_t k = n; k-- > 0;) {
        double sum = b[k];
        for (std::size_t j = k + 1; j < n; ++j) sum -= a[k][j] * x[j];
        x[k] = sum / a[k][k];
    }
    return true;
}

}  // namespace heatmatch
