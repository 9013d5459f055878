#pragma once

#include "assumed.hpp"
#include "refusal.hpp"

#include <cmath>
#include <vector>

#include "heatmatch/solar/observed_weather.hpp"

inline constexpr double hour_s = 3600.0;
inline constexpr double june_s = 1750464000.0;  // 2025-06-21 00:00 UTC

inline heatmatch::Site flat_site() {
    return {.latitude_deg = 45.0,
            .longitude_deg = 0.0,
            .elevation_m = 100.0,
            .tilt_deg = 0.0,
            .record_low_c = -20.0,
            .albedo = 0.2};
}

/// Rows of one day of June, the sun as high as a sine of the clock, the air at 20 °C.
struct Day {
    std::vector<double> times{};
    std::vector<double> ghi{};
    std::vector<double> dni{};
    std::vector<double> dhi{};
    std::vector<double> air{};
    std::vector<double> wind{};

    explicit Day(double step_s = hour_s, double start_s = june_s) {
        for (double at = 0.0; at < 24.0 * hour_s; at += step_s) {
            const double turn = (at + 0.5 * step_s) / hour_s - 12.0;
            const double sine = std::max(0.0, std::cos(turn * 3.14159265358979 / 15.0));
            times.push_back(start_s + at);
            ghi.push_back(std::fabs(turn) < 7.5 ? 800.0 * sine : 0.0);
            dni.push_back(std::fabs(turn) < 7.5 ? 600.0 * std::sqrt(sine) : 0.0);
            dhi.push_back(std::fabs(turn) < 7.5 ? 150.0 * sine : 0.0);
            air.push_back(20.0);
            wind.push_back(1.0);
        }
    }

    void drop(std::size_t row) {
        for (auto* list : {&times, &ghi, &dni, &dhi, &air, &wind}) {
            list->erase(list->begin() + static_cast<std::ptrdiff_t>(row));
        }
    }

    [[nodiscard]] heatmatch::Observations global() const {
        return {.unix_time_s = times, .ghi_w_m2 = ghi, .air_c = air};
    }
    [[nodiscard]] heatmatch::Observations parts() const {
        return {.unix_time_s = times, .dni_w_m2 = dni, .dhi_w_m2 = dhi, .air_c = air};
    }
};

/// The message with which observations are refused.
inline std::string refusal(const heatmatch::Observations& observations,
                           const heatmatch::Site& site = flat_site()) {
    return refusal_of<heatmatch::InvalidInput>(
        [&] { static_cast<void>(heatmatch::weather_from_observations(observations, site)); });
}

/// Whether a remark has a piece in it.
inline bool says(const heatmatch::Weather& weather, const std::string& piece) {
    for (const heatmatch::Sentence& remark : weather.remarks) {
        if (remark.text().find(piece) != std::string::npos) return true;
    }
    return false;
}
