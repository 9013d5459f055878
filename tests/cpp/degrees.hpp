#pragma once

#include <cmath>
#include <numbers>

inline double cosine_deg(double angle_deg) {
    return std::cos(angle_deg * std::numbers::pi / 180.0);
}
