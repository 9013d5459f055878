#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// An area with one kind of cover.
struct CoverArea {
    std::string cover{};
    double area_m2 = 0.0;  //!< [m2]

    friend bool operator==(const CoverArea&, const CoverArea&) = default;
};
[[nodiscard]] std::span<const Field> cover_area_fields();

/// The heated space.
struct Space {
    std::vector<CoverArea> covers{};
    std::optional<double> volume_m3{};          //!< of air [m3]
    std::optional<double> air_changes_per_h{};  //!< [1/h]
    std::optional<double> target_c{};           //!< target at night [°C]
    /// Heat capacity of floor, benches and tubs of water [kWh/K].
    std::optional<double> heat_capacity_kwh_k{};

    friend bool operator==(const Space&, const Space&) = default;
};
[[nodiscard]] std::span<const Field> space_fields();

}  // namespace heatmatch
