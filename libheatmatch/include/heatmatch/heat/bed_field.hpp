#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

struct BedFieldGrid;
struct LegView;

/// Cells and steps of a field. Cells are small around the legs, at their ends and at the wall.
struct BedFieldMesh {
    std::size_t across = 12;        //!< from the axis to the wall
    std::size_t high = 18;          //!< from the floor to the lid
    double longest_step_s = 600.0;  //!< longer steps are divided; at most 3600 s
};

/// Temperature field of a bed over radius and height, for power that changes over days: finite
/// volumes of the Kirchhoff variable, heat counted as enthalpy. Each leg releases its heat, and
/// that of its own metal, to the rings at its distance from the axis, centered in height. The
/// sheath is above the mean of the ring as in a steady field, `Theta_s = Theta(b) + q'/(2 pi) sum_j
/// (ln max(b, b_j) - ln d_j)`. Each angular term follows with its own time constant, so distant
/// legs do not affect each other at once.
/// Against a solution in three dimensions (printed by tests) of 1, 2, 4 or 8 legs, from 1 h on: the
/// sheath within 3 % of its rise, the loss of an hour and more after a charge within 6 %, the
/// hottest spot of the wall within 2 K. A box is modeled as a cylinder of the same volume and
/// height, with the side wall scaled to that of the box: its mean loss is right, the distribution
/// is not. Horizontal legs count as upright, heated over the whole height. @cite carslaw-jaeger
class BedField {
  public:
    /// A bed of uniform temperature; `rod_j_m_k` is the heat capacity of a meter of leg: metal and
    /// magnesia, 8 mm. Throws InvalidInput for temperatures out of range, for a fill, a shell or
    /// legs without a size, and for a mesh out of range.
    BedField(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c,
             BedFieldMesh mesh = {}, double rod_j_m_k = 170.0);
    /// The same with the legs of several banks, each with a power of its own.
    BedField(BedFill fill, StoreShell shell, std::vector<LegLayout> banks, double air_c,
             double start_c, BedFieldMesh mesh = {}, double rod_j_m_k = 170.0);

    /// Constant power into all legs of the only bank for that time, in implicit second-order steps
    /// no longer than the mesh allows. Throws InvalidInput for power or time below zero or not
    /// finite.
    void step(double power_w, double seconds);
    /// The same with one power for each bank. Throws InvalidInput for another number of powers.
    void step(std::span<const double> power_w, double seconds);
    /// The air around the store from now on. Throws InvalidInput out of range.
    void set_air_c(double air_c);
    /// Heat extraction from the whole bed to the air from now on, uniform over the bed, per kelvin
    /// between them: a fan through pipes; 0 is off [W/K]. Throws InvalidInput below zero or not
    /// finite.
    void set_extraction_w_k(double w_k);

    /// Of the hottest leg of a bank, at the power of the last step.
    [[nodiscard]] double sheath_c(std::size_t bank = 0) const;
    [[nodiscard]] double bed_mean_c() const;   //!< by mass
    [[nodiscard]] double edge_c() const;       //!< mean where the bed meets its side wall
    [[nodiscard]] double wall_c() const;       //!< of the outer wall at its hottest spot
    [[nodiscard]] double wall_mean_c() const;  //!< of the outer wall
    [[nodiscard]] double lid_c() const;        //!< outer surface of the lid over its hottest ring
    /// Mean around the axis at that distance from it and that height above the floor, interpolated
    /// linearly in Theta between the nodes. Throws InvalidInput outside the bed.
    [[nodiscard]] double at_c(double radius_m, double height_m) const;
    /// Bed temperature at half the length of the hottest leg, at that distance from the leg's axis,
    /// perpendicular to the line to the axis of the store. Throws InvalidInput outside the bed.
    [[nodiscard]] double near_leg_c(double distance_m, std::size_t bank = 0) const;

    /// Spread below and above the mean around the axis, at that distance from the axis and half the
    /// height, due to the positions of the legs [K]. Throws InvalidInput outside the bed.
    struct Around {
        double below_k = 0.0;
        double above_k = 0.0;
    };
    [[nodiscard]] Around around_k(double radius_m) const;

    [[nodiscard]] double loss_w() const {
        return loss_w_;
    }  //!< present loss through wall, lid and
       //!< floor
    [[nodiscard]] double extraction_w() const {
        return extraction_w_;
    }  //!< present heat extraction by the
       //!< fan
    // Since the start; supplied = stored + lost + extracted, to rounding.
    [[nodiscard]] double stored_kwh() const;  //!< below zero where the bed has cooled
    [[nodiscard]] double lost_kwh() const;
    [[nodiscard]] double taken_kwh() const;
    [[nodiscard]] double supplied_kwh() const;

  private:
    struct Outside {
        double flux_w_m2 = 0.0;
        double slope = 0.0;  //!< derivative with respect to Theta of the node [1/m]
    };
    void advance(double seconds, int halvings_left);
    bool stage(double seconds);
    void balance(double seconds);
    void conduct();
    double leave();
    void refactor(double seconds);
    void look();
    [[nodiscard]] Outside outside(double theta, double deep_m, double u_w_m2k, double& surface);
    [[nodiscard]] Outside wall_flux(double wall_k);
    [[nodiscard]] double theta_at(double radius_m, double height_m) const;
    [[nodiscard]] double mean_around(double radius_m) const;
    [[nodiscard]] double node_theta(std::size_t ring, std::size_t level) const;
    [[nodiscard]] double celsius(double theta) const;
    [[nodiscard]] double over_mean(double x_m, double y_m, std::size_t own) const;
    [[nodiscard]] double view_theta(const LegView& view) const;
    [[nodiscard]] const LegView& hottest_of(std::size_t bank) const;
    [[nodiscard]] double all_w() const;

    BedFill fill_;
    StoreShell shell_;
    BedFieldMesh mesh_;
    std::shared_ptr<const BedFieldGrid> grid_{};
    double air_k_ = 0.0;
    double start_ = 0.0;  //!< initial Theta
    double extraction_w_k_ = 0.0;
    std::vector<double> power_w_{};  //!< by bank
    std::vector<double> heat_w_{};   //!< into the cells
    std::vector<double> theta_{};
    std::vector<double> heat_j_{};       //!< by cell, since the start
    std::vector<double> wall_theta_{};   //!< of the surface, by level
    std::vector<double> lid_theta_{};    //!< by ring
    std::vector<double> floor_theta_{};  //!< by ring
    std::vector<double> wall_w_m2_{};    //!< by the wall's temperature above the air, once computed
    /// Power that the angular terms of the legs have reached, by bank.
    std::vector<std::vector<double>> following_w_{};
    std::vector<double> base_j_{};   //!< heat at the start of a stage
    std::vector<double> holds_j_{};  //!< heat that corresponds to their Theta
    std::vector<double> change_{};
    std::vector<double> t_slope_{};   //!< derivative of temperature with respect to Theta [K m/W]
    std::vector<double> residual_{};  //!< heat into a cell in excess of the heat it stores [W]
    std::vector<double> diagonal_{};  //!< its derivative with respect to the cell's Theta, without
                                      //!< conduction
    std::vector<double> factor_{};    //!< of the matrix, reused while it is accurate enough
    double factor_s_ = 0.0;           //!< stage length of that factor
    double loss_w_ = 0.0;
    double extraction_w_ = 0.0;
    double lost_j_ = 0.0;
    double taken_j_ = 0.0;
    double supplied_j_ = 0.0;
};

}  // namespace heatmatch
