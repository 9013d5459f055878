#pragma once

#include "store_fit.hpp"

#include <array>
#include <vector>

namespace heatmatch {

/// Where a fit of two logarithms settles, and how sure it is of them.
struct SettledFit {
    Sought at{};
    std::array<double, 2> error{};  //!< one standard error of each logarithm
    double correlation = 0.0;
    std::vector<double> left{};  //!< what was read less what the model reads [K]
    bool settled = false;
    bool tells = true;  //!< the log tells the two apart
};

/// The two numbers that make readings likeliest, by Gauss and Newton, readings weighed by their
/// noise and by the model's own error at each probe. Both are found in turns: the errors go with
/// the field, the noise is what they leave. Before a log says anything, both lie within a factor of
/// two of what is described (from memory), one standard error: a log that says little of one leaves
/// it there, with a band of eight times to both sides. Noise that follows itself counts as so many
/// readings fewer.
[[nodiscard]] SettledFit settled_fit(const StoreFit& fit, const Sought& described);

}  // namespace heatmatch
