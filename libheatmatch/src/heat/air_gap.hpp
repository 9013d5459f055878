#pragma once

namespace heatmatch {

/// A sheath of that radius within a gap of air, the sand around it at `outer_k`: radiation between
/// long cylinders of emissivity 0.8 and conduction [K].
[[nodiscard]] double across_gap_k(double sheath_m, double outer_m, double w_per_m, double outer_k);

}  // namespace heatmatch
