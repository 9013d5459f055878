#pragma once

#include "store_fit.hpp"

#include <array>
#include <vector>

namespace heatmatch {

/// Result of a fit of two logarithms, with its errors.
struct SettledFit {
    Sought at{};
    std::array<double, 2> error{};  //!< one standard error of each logarithm
    double correlation = 0.0;
    std::vector<double> left{};  //!< reading minus model [K]
    bool settled = false;
    bool tells = true;  //!< the log distinguishes the two numbers
};

/// The most likely two numbers, by Gauss and Newton, with weights from noise and from the model
/// error at each probe. Numbers and weights are computed in turn: the errors depend on the field,
/// the noise on the residuals. The prior is a factor of two around the described values (from
/// memory), one standard error: a log with little information on one leaves it there, with a band
/// of a factor of eight to both sides. Correlated noise counts as a smaller number of readings.
[[nodiscard]] SettledFit settled_fit(const StoreFit& fit, const Sought& described);

}  // namespace heatmatch
