#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// A store of water for power that changes. Natural convection mixes it, so it has one temperature,
/// up to boiling; excess heat leaves as steam. The sheath transfers heat to the water as in
/// sheath_temperature(), at 1000 W/m2K or at 15 K above boiling (from memory).
class MixedBulk {
  public:
    /// Throws InvalidInput for temperatures out of range, and for a part without a size.
    MixedBulk(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c);
    /// The same with several banks, each with a power of its own.
    MixedBulk(BedFill fill, StoreShell shell, std::vector<LegLayout> banks, double air_c,
              double start_c);

    /// Constant power into the only bank for that time. Throws InvalidInput for power or time below
    /// zero or not finite.
    void step(double power_w, double seconds);
    /// The same with one power for each bank. Throws InvalidInput for another number of powers.
    void step(std::span<const double> power_w, double seconds);
    void set_air_c(double air_c);
    /// Heat extraction to the air per kelvin, by a fan or a loop [W/K].
    void set_extraction_w_k(double w_k);

    [[nodiscard]] double sheath_c(std::size_t bank = 0) const;
    [[nodiscard]] double bed_mean_c() const;
    [[nodiscard]] double edge_c() const { return bed_mean_c(); }
    [[nodiscard]] double wall_c() const;
    [[nodiscard]] double lid_c() const;
    [[nodiscard]] double near_leg_c(double /*distance_m*/, std::size_t /*bank*/ = 0) const {
        return bed_mean_c();
    }
    [[nodiscard]] double loss_w() const;        //!< present loss through wall, lid and floor
    [[nodiscard]] double extraction_w() const;  //!< present heat extraction by the fan
    [[nodiscard]] double stored_kwh() const;
    [[nodiscard]] double lost_kwh() const;  //!< to the air since the start, including steam
    [[nodiscard]] double taken_kwh() const;
    [[nodiscard]] double supplied_kwh() const;
    [[nodiscard]] double steam_kwh() const;  //!< of that lost as steam

    static constexpr double longest_step_s = 600.0;

  private:
    [[nodiscard]] double heat_capacity_j_k() const;
    void advance(double power_w, double seconds);

    BedFill fill_;
    StoreShell shell_;
    std::vector<LegLayout> banks_;
    double air_k_ = 0.0;
    double start_k_ = 0.0;
    double bulk_k_ = 0.0;
    double extraction_w_k_ = 0.0;
    std::vector<double> power_w_{};  //!< by bank
    double lost_j_ = 0.0;
    double taken_j_ = 0.0;
    double steam_j_ = 0.0;
    double supplied_j_ = 0.0;
};

/// Consecutive days of constant power for some hours, starting at the temperature of the air.
struct BulkCharge {
    double power_w = 0.0;
    double hours = 5.0;  //!< per day [h]
    double days = 1.0;
    double air_c = 20.0;
};

/// Bulk temperature of a liquid at the end of the last charge, at most boiling [°C]. Each day is
/// computed in a few steps that are exact for the loss at their own mean temperature; within 0.3 K
/// of MixedBulk. Once days no longer differ, the rest is omitted.
[[nodiscard]] double charged_bulk_c(const BedFill& fill, const StoreShell& shell,
                                    const BulkCharge& charge);

}  // namespace heatmatch
