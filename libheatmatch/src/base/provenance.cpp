#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

std::optional<double> Price::typical() const {
    if (low && high) return 0.5 * (*low + *high);
    return low ? low : high;
}

}  // namespace heatmatch
