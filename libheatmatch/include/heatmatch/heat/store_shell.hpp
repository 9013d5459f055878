#pragma once

#include <string>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/setting/store.hpp"

namespace heatmatch {

/// Sizes of the outside of a store, and its heat transfer.
struct StoreShell {
    double volume_m3 = 0.0;
    double height_m = 0.0;
    double radius_m = 0.0;  //!< of the cylinder, or half the shorter side of the box [m]
    double length_m = 0.0;  //!< longer side of the box, or the diameter [m]
    bool round = true;
    double side_m2 = 0.0;
    double top_m2 = 0.0;
    double bottom_m2 = 0.0;
    double wall_emissivity = 0.9;
    double side_u_w_m2k = 0.0;  //!< of an insulated wall; 0: bare wall
    double side_factor = 1.0;   //!< measured over computed loss of a bare wall
    double top_u_w_m2k = 3.0;
    double bottom_u_w_m2k = 4.0;
    double stands_u_w_m2k = 2.0;  //!< of the base under the store alone, under a hot spot
    double stands_share = 1.0;    //!< share of the rise above the air that remains in the base
    double skin_w_k = 0.0;        //!< conductivity times thickness of a metal vessel [W/K]
    std::vector<Assumption> assumed{};

    /// Heat loss per kelvin between wall and air [W/K].
    [[nodiscard]] double loss_w_k(double wall_k, double air_k) const;
    /// The same per square meter of side wall: free convection and radiation for a bare wall.
    [[nodiscard]] double side_w_m2k(double wall_k, double air_k) const;
    /// Temperature of the outer surface of the wall, and of the lid, for a bed of that temperature
    /// at its edge [K]: equal to the bed where bare, lower by the drop across insulation elsewhere.
    [[nodiscard]] double side_surface_k(double edge_k, double air_k) const;
    [[nodiscard]] double lid_surface_k(double edge_k, double air_k) const;
    /// The same for the base under the store: lower by the drop across an insulated floor.
    [[nodiscard]] double floor_surface_k(double edge_k, double air_k) const;
    /// Heat transfer at a spot of the floor [W/m2K]: no more than the base conducts.
    [[nodiscard]] double floor_u_w_m2k() const;
};

/// Names of the missing sizes.
[[nodiscard]] std::vector<std::string> missing_sizes(const Store& store);

/// The shell of a store; emissivity 0.9, lid 3 and floor 4 W/m2K if not stated (from memory).
/// Throws InvalidInput where a size is missing. Over hours the base conducts 2 W/m2K if of wood,
/// dry soil or not stated, and 6 if of concrete. On metal legs the air carries away 4 W/m2K, and
/// 0.7 of the rise remains below (all from memory: 40 mm of wood, half a meter of ground).
[[nodiscard]] StoreShell store_shell(const Store& store);

/// Free convection at an upright plate in still air [W/m2K], by
/// `Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2`, Ra <= 1e12. @cite
/// churchill-chu-1975-plate
[[nodiscard]] double free_convection_plate(double height_m, double surface_k, double air_k);

}  // namespace heatmatch
