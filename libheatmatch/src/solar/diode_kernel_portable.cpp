#include "diode_kernel_body.hpp"

namespace heatmatch::kernel {

const Build portable{.operating_points = &operating_points,
                     .energy_sums = &energy_sums,
                     .maximum_powers = &maximum_powers};

}  // namespace heatmatch::kernel
