#pragma once

#include <array>
#include <span>
#include <vector>

namespace heatmatch {

/// Power of a bank in each hour of a day, as a share of its largest.
struct HeatDay {
    std::array<double, 24> share{};

    /// Hours at its largest power with the same heat [h].
    [[nodiscard]] double full_hours() const;

    friend bool operator==(const HeatDay&, const HeatDay&) = default;
};

/// The most of several days, as a share of `hours` at the largest power, at most 1; 1 without any.
[[nodiscard]] double share_of_hours(std::span<const HeatDay> days, double hours);

/// Power at one moment as a share of the largest: of the bank that is judged, and of each other
/// one. Heat from earlier hours of the day is included.
struct HeatMoment {
    double own = 1.0;
    std::vector<double> others{};

    friend bool operator==(const HeatMoment&, const HeatMoment&) = default;
};

/// Without those moments at which nothing is more than at another one.
[[nodiscard]] std::vector<HeatMoment> worst_moments(std::vector<HeatMoment> moments);

}  // namespace heatmatch
