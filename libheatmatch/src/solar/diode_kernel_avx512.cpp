#include "diode_kernel_body.hpp"

namespace heatmatch::kernel {

const Build avx512{.operating_points = &operating_points, .energy_sums = &energy_sums};

}  // namespace heatmatch::kernel
