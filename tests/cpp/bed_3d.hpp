#pragma once

#include "bed_3d_mesh.hpp"
#include "even_table.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

/// What a store in three dimensions is made of.
struct Bed3dStore {
    heatmatch::BedFill fill{};
    heatmatch::StoreShell shell{};
    heatmatch::LegLayout legs{};
    std::vector<double> weights{};  //!< power of each leg over the mean of all; equal without
    double air_c = 20.0;
    double start_c = 20.0;
    std::optional<double> low_m{};  //!< of the lower leg ends over the floor; centred without
    bool lies = false;              //!< legs along x, `low_m` over the floor, at their y
};

/// Size of cells and steps.
struct Bed3dMesh {
    double near_m = 0.014;       //!< across, around the legs
    double growth = 1.1;         //!< of one cell over the next beyond them, at most
    double high_m = 0.020;       //!< upright
    double first_step_s = 30.0;  //!< grow by a quarter each
    double longest_step_s = 600.0;
};

/// Transient conduction in an upright cylinder with upright legs, by finite
/// volumes in three dimensions on a quarter of it. Unknown is the Kirchhoff variable, so that the
/// conduction is linear; heat is counted as enthalpy. Legs are line sources in the cells they pass,
/// and in a square lattice a line of q' stands over its own cell as `q'/(2 pi) ln(0.198 dx/r0)`.
/// The wall is cut out of the cells by its circle and spreads no heat. Two implicit stages a step,
/// of second order and without ringing; Newton with conjugate gradients.
class Bed3d {
  public:
    explicit Bed3d(const Bed3dStore& store, const Bed3dMesh& mesh = {});

    /// Constant power into all legs together for that long.
    void run(double power_w, double seconds);
    /// The same with one power for each run of legs, in the order of the layout.
    void run(std::span<const double> power_w, const std::vector<std::size_t>& legs, double seconds);

    [[nodiscard]] double sheath_c() const;  //!< of the hottest leg, at half its length
    /// Of the hottest of some legs, by their places in the layout.
    [[nodiscard]] double sheath_c(std::size_t first, std::size_t last) const;
    [[nodiscard]] double bed_mean_c() const;   //!< by volume
    [[nodiscard]] double wall_c() const;       //!< hottest spot of the side wall
    [[nodiscard]] double lid_c() const;        //!< hottest spot under the lid
    [[nodiscard]] double floor_c() const;      //!< hottest spot over the floor
    [[nodiscard]] double wall_mean_c() const;  //!< of the side wall
    [[nodiscard]] double lid_mean_c() const;   //!< under the lid
    [[nodiscard]] double stored_j() const;     //!< since the start
    [[nodiscard]] double lost_j() const { return 4.0 * lost_j_; }
    [[nodiscard]] double supplied_j() const { return supplied_j_; }
    [[nodiscard]] double volume_m3() const;
    [[nodiscard]] double side_m2() const;
    [[nodiscard]] std::size_t cells() const { return theta_.size(); }
    /// At the centre of the store [°C].
    [[nodiscard]] double centre_c() const;
    /// At half the height on the x axis (on which a row of legs lies) or on the y axis [°C].
    [[nodiscard]] double probe_c(bool on_x, double from_axis_m) const;

  private:
    struct Source {
        std::size_t column = 0;
        double share = 1.0;  //!< of the leg within the quarter
        std::size_t leg = 0;
        double weight = 1.0;
    };
    struct Outside {  //!< a cell's part of the surface
        std::size_t cell = 0;
        double area_m2 = 0.0;
        double deep_m = 0.0;
        int kind = 0;  //!< 0 side, 1 lid, 2 floor
        double surface_k = 0.0;
    };
    void build(const Bed3dMesh& mesh);
    void place_legs();
    void lay_legs();
    void surface();
    [[nodiscard]] double hottest_c(int kind) const;
    [[nodiscard]] double mean_c(int kind) const;
    void conduction_diagonal();
    double flux(Outside& outside, double theta, double& slope) const;
    /// Heat that leaves, put into the residual and the diagonal [W].
    double outward();
    void conduct(const std::vector<double>& v, std::vector<double>& out) const;
    /// One implicit stage from the enthalpy `base`: returns the heat lost [W].
    double stage(const std::vector<double>& base, double step_s, double power_w);
    /// Moves Theta by what the residual asks for.
    void solve();
    [[nodiscard]] double enthalpy(std::size_t cell) const {
        return mass_kg_[cell / levels_] * enthalpy_.at(theta_[cell]);
    }

    Bed3dStore store_;
    QuarterAxis x_{};
    QuarterAxis y_{};
    QuarterDisc disc_{};
    std::size_t levels_ = 1;
    double level_m_ = 0.0;
    std::vector<double> leg_share_{};  //!< of a leg's length in each level
    std::vector<Source> sources_{};
    std::vector<Outside> outsides_{};
    std::vector<double> mass_kg_{};  //!< of a cell, by column
    EvenTable temperature_{};        //!< [K] of Theta
    EvenTable enthalpy_{};           //!< [J/kg] of Theta
    EvenTable side_w_m2_{};          //!< of the wall's temperature
    EvenTable theta_of_{};           //!< of temperature
    std::vector<double> theta_{};
    std::vector<double> start_j_{};
    double lost_j_ = 0.0;
    double supplied_j_ = 0.0;
    double power_w_ = 0.0;
    std::vector<double> residual_{};
    std::vector<double> diagonal_{};
    std::vector<double> change_{};
    std::vector<double> search_{};
    std::vector<double> product_{};
    std::vector<double> inverse_{};     //!< of the whole diagonal
    std::vector<double> conduction_{};  //!< its part by conduction
    Bed3dMesh mesh_{};
};
