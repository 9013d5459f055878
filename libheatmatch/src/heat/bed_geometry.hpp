#pragma once

#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// A body of revolution around legs of that length, with the volume of the bed.
struct LegBody {
    double length_m = 0.0;
    double outer_m = 0.0;  //!< its outer radius [m]
    double mean_m = 0.0;   //!< radius at which it has its mean temperature [m]

    /// Thermal resistance from that radius to the outer one, times the conductivity [1/m].
    [[nodiscard]] double form() const;
};

/// Distances of all legs from one leg of this circuit, the first its own radius [m].
struct LegDistances {
    std::vector<double> own_m{};
    std::vector<std::vector<double>> others_m{};  //!< by circuit
};

/// Parameters of a charge that do not depend on power.
struct BedGeometry {
    LegBody body{};
    std::vector<LegBody> other_bodies{};
    /// From the hottest leg; with other circuits, from each leg of this one.
    std::vector<LegDistances> distances{};
    double surface_m = 0.0;  //!< where the fill begins around a leg of this circuit [m]
    double heated_m = 0.0;
    double air_k = 0.0;
    double seconds = 0.0;
    double days = 1.0;
};

[[nodiscard]] BedGeometry bed_geometry(const BedCharge& charge);

/// Rise of the hottest spot of the wall over the mean rise, at that power of this circuit.
[[nodiscard]] double concentration_of(const BedCharge& charge, double power_w);

}  // namespace heatmatch
