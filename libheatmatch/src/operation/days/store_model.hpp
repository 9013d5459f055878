#pragma once

#include <variant>

#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/heat/mixed_bulk.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"

namespace heatmatch {

/// The store of a bank for power that changes, for any fill.
class StoreModel {
  public:
    /// For a bank known in its store.
    StoreModel(const BankHeat& heat, ConductivityEnd end, double air_c, double start_c);

    void step(double power_w, double seconds);
    void set_air_c(double air_c);
    void set_extraction_w_k(double w_k);

    [[nodiscard]] double sheath_c() const;
    [[nodiscard]] double bed_mean_c() const;
    [[nodiscard]] double edge_c() const;
    [[nodiscard]] double wall_c() const;
    [[nodiscard]] double lid_c() const;
    [[nodiscard]] double near_leg_c(double distance_m) const;
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
    BedCharge charge_{};
    double power_w_ = 0.0;
};

}  // namespace heatmatch
