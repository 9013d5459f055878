#pragma once

#include <optional>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/space.hpp"

namespace heatmatch {

/// Heat capacity of a cubic meter of air [Wh/m3K]; 1.2 kg/m3 of 1010 J/kgK. @cite incropera
inline constexpr double air_wh_m3k = 0.34;

/// Heat loss of a heated space: `sum(U A) + 0.34 n V`. Sun through its covers, the ground and other
/// heat sources are not counted: this is a dark night.
struct SpaceBalance {
    double cover_w_k = 0.0;  //!< sum of U A [W/K]
    double cover_low_w_k = 0.0;
    double cover_high_w_k = 0.0;
    double air_w_k = 0.0;              //!< by air change [W/K]
    double heat_capacity_wh_k = 0.0;   //!< of floor, benches and air; 0: no thermal mass
    std::optional<double> target_c{};  //!< target at night [°C]
    /// Heat that keeps it at the target, mean over the season of a ranking; empty: not known.
    std::optional<double> needed_kwh_per_day{};
    std::vector<Assumption> assumed{};

    [[nodiscard]] bool known() const { return cover_w_k > 0.0; }
    /// Heat loss to the outside per kelvin [W/K].
    [[nodiscard]] double loss_w_k() const { return cover_w_k + air_w_k; }
    /// Steady temperature rise above the outside [K]; 0 where there is no loss.
    [[nodiscard]] double lift_k(double heat_w) const;
    /// Its temperature `hours` later under steady heat, from `now_c` on:
    /// `T = Te + (T0 - Te) exp(-t/tau)`, `Te = Tout + Q/UA`, `tau = C/UA` [°C].
    [[nodiscard]] double after_c(double now_c, double outside_c, double heat_w, double hours) const;
};

/// The balance of a space with its covers. An unknown air change is 1 per hour, an unknown volume
/// 0.5 m3 for each m2 of cover (both from memory). Without covers almost no loss is counted,
/// because the covers are then not known. Throws NotFound for an unknown cover.
[[nodiscard]] SpaceBalance space_balance(const Space& space, const Parts& parts);

}  // namespace heatmatch
