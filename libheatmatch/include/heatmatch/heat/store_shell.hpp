#pragma once

#include <string>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/setting/store.hpp"

namespace heatmatch {

/// The outside of a store: sizes, and how it loses heat.
struct StoreShell {
    double volume_m3 = 0.0;
    double height_m = 0.0;
    double radius_m = 0.0;  //!< of the cylinder, or of one as wide as the box is narrow [m]
    double length_m = 0.0;  //!< longer side of the box, or the diameter [m]
    bool round = true;
    double side_m2 = 0.0;
    double top_m2 = 0.0;
    double bottom_m2 = 0.0;
    double wall_emissivity = 0.9;
    double side_u_w_m2k = 0.0;  //!< of an insulated wall; 0: bare
    double side_factor = 1.0;   //!< measured loss of a bare wall over what is computed
    double top_u_w_m2k = 3.0;
    double bottom_u_w_m2k = 4.0;
    double stands_u_w_m2k = 2.0;  //!< of what it stands on alone, under a hot spot
    double stands_share = 1.0;    //!< of the rise over it that what lies under it has
    double skin_w_k = 0.0;        //!< conductivity times thickness of a metal vessel [W/K]
    std::vector<Assumption> assumed{};

    /// Heat lost for a kelvin between wall and air [W/K].
    [[nodiscard]] double loss_w_k(double wall_k, double air_k) const;
    /// The same of a square metre of side wall: free convection and radiation where it is bare.
    [[nodiscard]] double side_w_m2k(double wall_k, double air_k) const;
    /// Temperature of the outer surface of the wall, and of the lid, over a bed of that temperature
    /// at its edge [K]: the bed's own where bare, less the drop across insulation elsewhere.
    [[nodiscard]] double side_surface_k(double edge_k, double air_k) const;
    [[nodiscard]] double lid_surface_k(double edge_k, double air_k) const;
    /// The same of what it stands on: less the drop across an insulated floor.
    [[nodiscard]] double floor_surface_k(double edge_k, double air_k) const;
    /// What leaves a spot of the floor [W/m2K]: no more than what it stands on takes.
    [[nodiscard]] double floor_u_w_m2k() const;
};

/// Names of the sizes that are missing to compute with.
[[nodiscard]] std::vector<std::string> missing_sizes(const Store& store);

/// The shell of a store; emissivity 0.9, lid 3 and floor 4 W/m2K unless told (from memory). Throws
/// InvalidInput where a size is missing. What it stands on takes, over hours, 2 W/m2K of wood, dry
/// soil and what is not told, 6 of concrete, and on metal legs the air takes 4 and leaves 0.7 of
/// the rise to what lies under it (all from memory: 40 mm of wood, half a metre of ground).
[[nodiscard]] StoreShell store_shell(const Store& store);

/// Free convection at an upright plate in still air [W/m2K], by
/// `Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2`, Ra <= 1e12. @cite
/// churchill-chu-1975-plate
[[nodiscard]] double free_convection_plate(double height_m, double surface_k, double air_k);

}  // namespace heatmatch
