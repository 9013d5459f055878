#pragma once

#include "leg_modes.hpp"
#include "theta_table.hpp"

#include <cstddef>
#include <vector>

#include "heatmatch/heat/bed_field.hpp"

namespace heatmatch {

/// Two neighbours and what the nearer to the first counts: a value between nodes.
struct Between {
    std::size_t first = 0;  //!< its neighbour is the next
    double share = 1.0;     //!< of the first
};

/// What stays the same in a field of a bed: cells, conductances, where the legs put their heat.
/// Cells lie level by level from the floor, in each from the axis outwards. A ring's node stands
/// where a logarithmic field has its mean over the ring, `ln r = (b² ln b - a² ln a)/(b² - a²) -
/// 1/2`, so that heat from the axis meets the exact resistance. @cite carslaw-jaeger
struct BedFieldGrid {
    BedFieldGrid(const BedFill& fill, const StoreShell& shell, const LegLayout& legs,
                 const BedFieldMesh& mesh, double rod_j_m_k);

    std::size_t across = 0;
    std::size_t high = 0;
    ThetaTable table;
    double radius_m = 0.0;  //!< of the cylinder
    double height_m = 0.0;
    double half_x_m = 0.0;  //!< of a box; round: 0
    double half_y_m = 0.0;
    std::vector<double> r_m{};         //!< of the rings' nodes
    std::vector<double> ring_m2{};     //!< seen from above
    std::vector<double> outwards{};    //!< 2 pi/ln(r'/r), from a ring to the next
    std::vector<double> z_m{};         //!< of the levels' nodes above the floor
    std::vector<double> level_m{};     //!< their heights
    std::vector<double> upwards{};     //!< 1/m, from a level to the next
    std::vector<double> mass_kg{};     //!< by cell
    std::vector<double> rod_j_k{};     //!< heat capacity of the legs in it
    std::vector<double> heat_share{};  //!< of all power
    std::vector<double> volume_share{};
    double wall_deep_m = 0.0;  //!< Theta from a node to the surface, over the flux there
    double lid_deep_m = 0.0;
    double floor_deep_m = 0.0;
    double side_m2_m = 0.0;  //!< side wall of a metre of height
    double lid_scale = 1.0;  //!< real lid over the cylinder's
    double floor_scale = 1.0;
    LegLayout::Leg hottest{};    //!< leg
    double superposition = 0.0;  //!< at its surface

    LegModes modes;

    [[nodiscard]] std::size_t cells() const { return mass_kg.size(); }
    /// The radius in the cylinder: in a box that of the ring that holds as much as the box around
    /// the axis on which the spot lies.
    [[nodiscard]] double from_axis(double x_m, double y_m) const;
    /// Between which rings a radius lies, linear in its logarithm; none beyond the outer nodes.
    [[nodiscard]] Between ring_at(double r) const;
    /// Between which levels a height lies.
    [[nodiscard]] Between level_at(double z) const;
    /// What the legs themselves add at a spot over the mean of the cells around the axis there, for
    /// a heat of 2 pi a metre: `sum_j (mean of ln max(r, r_j) - ln d_j)`.
    [[nodiscard]] double over_rings(double x_m, double y_m) const;

  private:
    void lay_rings();
    void lay_levels(double heated_m);
    void place_legs(double heated_m, double rod_j_m_k);

    LegLayout legs_{};
};

}  // namespace heatmatch
