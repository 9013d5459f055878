#pragma once

#include "leg_modes.hpp"
#include "theta_table.hpp"

#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/heat/bed_field.hpp"

namespace heatmatch {

/// Index and weight of the lower of two neighboring nodes, for interpolation.
struct Between {
    std::size_t first = 0;  //!< the second is the next one
    double share = 1.0;     //!< weight of the first
};

/// What the legs of one bank contribute at the surface of a leg, by bank of the contributing legs.
struct LegView {
    LegLayout::Leg leg{};
    std::vector<double> superposition{};
    std::vector<LegModes::Waves> waves{};
};

/// Share of the contribution of endless legs, at a spot over the mean around the axis, that remains
/// for legs of their length: `sum asinh(L/2d) - its mean around` over `sum ln max(r, r_j) - ln d`,
/// within 0 to 1. For legs of another bank: short ones far away contribute little.
[[nodiscard]] double finite_share(const LegLayout& legs, double x_m, double y_m);

/// The legs of one bank in the cells of a bed.
struct LegsInGrid {
    LegLayout legs{};
    LegModes modes;
    std::vector<double> heat_share{};             //!< of its power, by cell
    std::vector<LegView> views{};                 //!< of its hottest leg; of each where banks share
    std::vector<LegModes::Waves> at_wall_spot{};  //!< at its spot of the wall, by bank

    [[nodiscard]] double per_watt() const;  //!< heat of 2 pi per meter [1/m]
};

/// Constant data of the field of a bed: cells, conductances, heat input of the legs. Cells are
/// stored level by level from the floor, within each from the axis outward. The node of a ring is
/// at the mean of a logarithmic field over the ring, `ln r = (b² ln b - a² ln a)/(b² - a²) - 1/2`,
/// so that the resistance for heat from the axis is exact. @cite carslaw-jaeger
struct BedFieldGrid {
    BedFieldGrid(const BedFill& fill, const StoreShell& shell, std::span<const LegLayout> banks,
                 const BedFieldMesh& mesh, double rod_j_m_k);

    std::size_t across = 0;
    std::size_t high = 0;
    ThetaTable table;
    double radius_m = 0.0;  //!< of the cylinder
    double height_m = 0.0;
    double half_x_m = 0.0;  //!< of a box; round: 0
    double half_y_m = 0.0;
    std::vector<double> r_m{};       //!< of the rings' nodes
    std::vector<double> ring_m2{};   //!< seen from above
    std::vector<double> outwards{};  //!< 2 pi/ln(r'/r), from a ring to the next
    std::vector<double> z_m{};       //!< of the levels' nodes above the floor
    std::vector<double> level_m{};   //!< their heights
    std::vector<double> upwards{};   //!< 1/m, from a level to the next
    std::vector<double> mass_kg{};   //!< by cell
    std::vector<double> rod_j_k{};   //!< heat capacity of the legs in the cell
    std::vector<double> volume_share{};
    double wall_deep_m = 0.0;  //!< distance in Theta from a node to the surface, per flux there
    double lid_deep_m = 0.0;
    double floor_deep_m = 0.0;
    double side_m2_m = 0.0;  //!< side wall area per meter of height
    double lid_scale = 1.0;  //!< area of the real lid over that of the cylinder
    double floor_scale = 1.0;
    std::vector<LegsInGrid> banks{};

    [[nodiscard]] std::size_t cells() const { return mass_kg.size(); }
    /// The radius in the cylinder. For a box: that of the ring with the same area as the box around
    /// the axis on which the spot is.
    [[nodiscard]] double from_axis(double x_m, double y_m) const;
    /// Interpolation between rings, linear in the logarithm of the radius; clamped at the outer
    /// nodes.
    [[nodiscard]] Between ring_at(double r) const;
    /// Interpolation between levels.
    [[nodiscard]] Between level_at(double z) const;
    /// Contribution of the legs of a bank at a spot above the mean of the cells around the axis
    /// there, for a heat of 2 pi per meter: `sum_j (mean of ln max(r, r_j) - ln d_j)`.
    [[nodiscard]] double over_rings(const LegLayout& legs, double x_m, double y_m) const;

  private:
    void turn_box(const StoreShell& shell);
    void lay_rings();
    void lay_levels();
    void place_legs(LegsInGrid& bank, double rod_j_m_k);
    void look_from_legs();
};

}  // namespace heatmatch
