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

/// Input of a store in three dimensions.
struct Bed3dStore {
    heatmatch::BedFill fill{};
    heatmatch::StoreShell shell{};
    heatmatch::LegLayout legs{};
    std::vector<double> weights{};  //!< power of each leg over the mean of all; equal without
    double air_c = 20.0;
    double start_c = 20.0;
    std::optional<double>
        low_m{};        //!< height of the lower leg ends above the floor; centered if not given
    bool lies = false;  //!< legs lie along x, `low_m` above the floor, each at its y
};

/// Size of cells and steps.
struct Bed3dMesh {
    double near_m = 0.014;       //!< width of cells around the legs
    double growth = 1.1;         //!< largest ratio of neighboring cells beyond the legs
    double high_m = 0.020;       //!< height of cells
    double first_step_s = 30.0;  //!< each further step is a quarter longer
    double longest_step_s = 600.0;
};

/// Reference for the library's faster models: transient conduction in an upright cylinder by finite
/// volumes in three dimensions, on a quarter of it for symmetry. The unknown is the Kirchhoff
/// variable, so that conduction is linear; heat is counted as enthalpy. Legs are line sources in
/// the cells that they cross. In a square lattice the surface of a line source q' is above its cell
/// by `q'/(2 pi) ln(0.198 dx/r0)`. The circle of the wall cuts the cells; the wall itself conducts
/// no heat along its surface. Each step has two implicit stages, second order without oscillation,
/// solved by Newton's method with conjugate gradients.
class Bed3d {
  public:
    explicit Bed3d(const Bed3dStore& store, const Bed3dMesh& mesh = {});

    /// Applies a constant total power to all legs for that time.
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
    /// Temperature at the center of the store [°C].
    [[nodiscard]] double centre_c() const;
    /// Temperature at half the height on the x axis, along a row of legs, or on the y axis [°C].
    [[nodiscard]] double probe_c(bool on_x, double from_axis_m) const;

  private:
    struct Source {
        std::size_t column = 0;
        double share = 1.0;  //!< of the leg within the quarter
        std::size_t leg = 0;
        double weight = 1.0;
    };
    struct Outside {  //!< part of the surface in a cell
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
    /// Heat loss of the surface [W], added to residual and diagonal.
    double outward();
    void conduct(const std::vector<double>& v, std::vector<double>& out) const;
    /// One implicit stage from the enthalpy `base`: returns the heat lost [W].
    double stage(const std::vector<double>& base, double step_s, double power_w);
    /// Corrects Theta until the residual vanishes.
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
    std::vector<double> mass_kg_{};  //!< mass of a cell of each column
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
