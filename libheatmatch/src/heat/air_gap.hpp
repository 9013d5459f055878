#pragma once

namespace heatmatch {

/// Temperature of a sheath of that radius within an air gap, with the sand around it at `outer_k`:
/// radiation between long cylinders of emissivity 0.8, and conduction [K].
[[nodiscard]] double across_gap_k(double sheath_m, double outer_m, double w_per_m, double outer_k);

}  // namespace heatmatch
