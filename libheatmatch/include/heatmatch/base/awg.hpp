#pragma once

#include <string>

namespace heatmatch {

/// Diameter of a solid conductor [mm]: `0.127 * 92^((36 - n)/39)`, n the AWG number; 0 for 1/0,
/// -1 for 2/0 and so on. Valid for 40 to 4/0. @cite astm-b258
[[nodiscard]] double awg_diameter_mm(double awg);
/// Cross-section of a solid conductor [mm2] of the AWG number. @cite astm-b258
[[nodiscard]] double awg_area_mm2(double awg);
/// AWG number whose solid cross-section is the given one [mm2]; not rounded. @cite astm-b258
[[nodiscard]] double area_to_awg(double area_mm2);
/// `14 AWG`, `2/0 AWG`: the size whose cross-section is nearest.
[[nodiscard]] std::string awg_label(double area_mm2);

}  // namespace heatmatch
