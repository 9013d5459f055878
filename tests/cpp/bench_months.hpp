#pragma once

#include "heatmatch/setting/site.hpp"

/// A steep plane at 44 degrees north.
inline heatmatch::Site bench_site() {
    return {.latitude_deg = 44.1,
            .longitude_deg = -72.6,
            .elevation_m = 310.0,
            .tilt_deg = 60.0,
            .azimuth_deg = 180.0,
            .record_low_c = -32.0,
            .albedo = 0.2};
}

/// Twelve invented means on it, January first.
inline heatmatch::MonthlyNormals bench_normals() {
    return {.sun_hours = {2.6, 3.5, 4.4, 4.6, 4.8, 5.0, 5.1, 4.9, 4.4, 3.3, 2.2, 2.0},
            .temp_min_c = {-13, -12, -6, 0, 6, 11, 14, 13, 8, 2, -3, -9},
            .temp_max_c = {-3, -1, 4, 12, 19, 24, 27, 25, 21, 13, 6, -1}};
}
