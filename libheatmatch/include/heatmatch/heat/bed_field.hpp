#pragma once

#include <cstddef>
#include <memory>
#include <vector>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

struct BedFieldGrid;

/// Cells and steps of a field. Cells are small around the legs, at their ends and at the wall.
struct BedFieldMesh {
    std::size_t across = 12;        //!< from the axis to the wall
    std::size_t high = 18;          //!< from the floor to the lid
    double longest_step_s = 600.0;  //!< longer ones are cut; at most 3600 s
};

/// A bed around its legs as a field over radius and height, for power that changes over days:
/// finite volumes of the Kirchhoff variable, heat counted as enthalpy. Each leg gives its heat, and
/// that of its own metal, to the rings at its distance from the axis, centred in height. The sheath
/// stands over the mean of the ring as in a steady field, `Theta_s = Theta(b) + q'/(2 pi) sum_j (ln
/// max(b, b_j) - ln d_j)`, the waves of which around the axis each take their time: legs far apart
/// do not feel each other at once. Against a solution in three dimensions (tests print it) of 1, 2,
/// 4 or 8 legs, from 1 h on: the sheath within 3 % of its rise, the loss of an hour and more after
/// a charge within 6 %, the wall's hottest spot within 2 K. A box is a cylinder of the same volume
/// and height whose side wall is scaled to the box's: of its loss the mean is right, not the place.
/// Legs that lie count as upright, heated over the whole height. @cite carslaw-jaeger
class BedField {
  public:
    /// A bed of one temperature; `rod_j_m_k` is the heat of a metre of leg: metal and magnesia, 8
    /// mm. Throws InvalidInput for temperatures out of range, for a fill, a shell or legs that have
    /// no size, and for a mesh out of range.
    BedField(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c,
             BedFieldMesh mesh = {}, double rod_j_m_k = 170.0);

    /// Constant power into all legs together for that long, in implicit steps of the mesh's length
    /// at most, of second order. Throws InvalidInput for power or time below zero or not finite.
    void step(double power_w, double seconds);
    /// The air around the store from now on. Throws InvalidInput out of range.
    void set_air_c(double air_c);
    /// Heat drawn from the whole bed to the air from now on, evenly, for a kelvin between them: a
    /// fan through pipes; 0 is off [W/K]. Throws InvalidInput below zero or not finite.
    void set_take_off_w_k(double w_k);

    [[nodiscard]] double sheath_c() const;    //!< of the hottest leg, at the power of the last step
    [[nodiscard]] double bed_mean_c() const;  //!< by mass
    [[nodiscard]] double edge_c() const;      //!< where the bed meets its side wall, in the mean
    [[nodiscard]] double wall_c() const;      //!< of the outer wall at its hottest spot
    [[nodiscard]] double wall_mean_c() const;  //!< of the outer wall
    [[nodiscard]] double lid_c() const;        //!< outer surface of the lid over its hottest ring
    /// Mean around the axis at that distance from it and that height above the floor, between the
    /// nodes straight in Theta. Throws InvalidInput outside the bed.
    [[nodiscard]] double at_c(double radius_m, double height_m) const;
    /// Bed at half the length of the hottest leg, that far from its axis across the way to the
    /// store's own. Throws InvalidInput outside the bed.
    [[nodiscard]] double near_leg_c(double distance_m) const;

    /// How far spots at that distance from the axis and half the height lie below and above the
    /// mean around it, by where the legs stand [K]. Throws InvalidInput outside the bed.
    struct Around {
        double below_k = 0.0;
        double above_k = 0.0;
    };
    [[nodiscard]] Around around_k(double radius_m) const;

    [[nodiscard]] double loss_w() const { return loss_w_; }  //!< now, by wall, lid and floor
    [[nodiscard]] double take_off_w() const { return take_off_w_; }  //!< now, by the fan
    // Since the start; supplied = stored + lost + taken to rounding.
    [[nodiscard]] double stored_kwh() const;  //!< below zero where it cooled
    [[nodiscard]] double lost_kwh() const;
    [[nodiscard]] double taken_kwh() const;
    [[nodiscard]] double supplied_kwh() const;

  private:
    struct Outside {
        double flux_w_m2 = 0.0;
        double slope = 0.0;  //!< over Theta of the node [1/m]
    };
    void advance(double power_w, double seconds, int halvings_left);
    bool stage(double power_w, double seconds);
    void balance(double power_w, double seconds);
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

    BedFill fill_;
    StoreShell shell_;
    LegLayout legs_;
    BedFieldMesh mesh_;
    std::shared_ptr<const BedFieldGrid> grid_{};
    double air_k_ = 0.0;
    double start_ = 0.0;  //!< Theta at first
    double take_off_w_k_ = 0.0;
    double power_w_ = 0.0;
    std::vector<double> theta_{};
    std::vector<double> heat_j_{};       //!< by cell, since the start
    std::vector<double> wall_theta_{};   //!< of the surface, by level
    std::vector<double> lid_theta_{};    //!< by ring
    std::vector<double> floor_theta_{};  //!< by ring
    std::vector<double> wall_w_m2_{};    //!< over the wall's excess over the air, where once asked
    std::vector<double> following_w_{};  //!< power that the legs' own fields have followed to
    std::vector<double> base_j_{};       //!< heat a stage starts from
    std::vector<double> holds_j_{};      //!< what their Theta stands for
    std::vector<double> change_{};
    std::vector<double> t_slope_{};   //!< of temperature over Theta [K m/W]
    std::vector<double> residual_{};  //!< heat that flows into a cell beyond what it takes up [W]
    std::vector<double> diagonal_{};  //!< its fall over the cell's own Theta, without conduction
    std::vector<double> factor_{};    //!< of the matrix, used as long as it serves
    double factor_s_ = 0.0;           //!< the stage it was made for
    double loss_w_ = 0.0;
    double take_off_w_ = 0.0;
    double lost_j_ = 0.0;
    double taken_j_ = 0.0;
    double supplied_j_ = 0.0;
};

}  // namespace heatmatch
