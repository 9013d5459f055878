#pragma once

#include <span>
#include <variant>
#include <vector>

#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/heat/mixed_bulk.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"

namespace heatmatch {

/// The store of some banks for power that changes, for any fill.
class StoreModel {
  public:
    /// For banks known in their store, at least one.
    StoreModel(std::span<const BankHeat* const> heats, ConductivityEnd end, double air_c,
               double start_c);

    /// One power for each bank.
    void step(std::span<const double> power_w, double seconds);
    void set_air_c(double air_c);
    void set_extraction_w_k(double w_k);

    [[nodiscard]] double sheath_c(std::size_t bank) const;
    [[nodiscard]] double bed_mean_c() const;
    [[nodiscard]] double edge_c() const;
    [[nodiscard]] double wall_c() const;
    [[nodiscard]] double lid_c() const;
    [[nodiscard]] double near_leg_c(double distance_m, std::size_t bank) const;
    [[nodiscard]] double loss_w() const;
    [[nodiscard]] double stored_kwh() const;
    [[nodiscard]] double lost_kwh() const;
    [[nodiscard]] double taken_kwh() const;
    [[nodiscard]] double steam_kwh() const;
    [[nodiscard]] bool liquid() const { return std::holds_alternative<MixedBulk>(model_); }
    /// Of the fill at a temperature [W/mK].
    [[nodiscard]] double conductivity_w_mk(double at_c) const;

  private:
    std::variant<BedField, MixedBulk> model_;
    std::vector<BedCharge> charges_{};  //!< by bank
    std::vector<double> power_w_{};     //!< by bank
};

}  // namespace heatmatch
