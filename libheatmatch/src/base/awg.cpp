#include "heatmatch/base/awg.hpp"

#include <cmath>

namespace heatmatch {

double awg_diameter_mm(double awg) {
    return 0.127 * std::pow(92.0, (36.0 - awg) / 39.0);
}

double awg_area_mm2(double awg) {
    const double diameter = awg_diameter_mm(awg);
    return 0.78539816339744831 * diameter * diameter;
}

double area_to_awg(double area_mm2) {
    const double diameter = std::sqrt(area_mm2 / 0.78539816339744831);
    return 36.0 - 39.0 * std::log(diameter / 0.127) / std::log(92.0);
}

std::string awg_label(double area_mm2) {
    const int awg = static_cast<int>(std::lround(area_to_awg(area_mm2)));
    if (awg > 0) return std::to_string(awg) + " AWG";
    return std::to_string(1 - awg) + "/0 AWG";
}

}  // namespace heatmatch
