#pragma once

#include <optional>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// A bed that its legs charge with constant power from the temperature of the air on.
struct BedCharge {
    BedFill fill{};
    StoreShell shell{};
    LegLayout legs{};
    double air_c = 20.0;       //!< around the store [°C]
    double hours = 5.0;        //!< of a day [h]
    double days = 1.0;         //!< such days, one after the other
    double gap_m = 0.0;        //!< of air around the sheath, where grains settled away [m]
    double rod_j_m_k = 170.0;  //!< of a metre of element: metal and magnesia, 8 mm [J/mK]
    /// What legs.wall_concentration() gives in that shell, where it was computed before.
    std::optional<double> wall_concentration{};
};

/// Temperatures at the end of the charge.
struct BedTemperatures {
    double sheath_c = 0.0;       //!< of the hottest leg [°C]
    double bed_mean_c = 0.0;     //!< of the bulk [°C]
    double edge_c = 0.0;         //!< where the bed meets its wall, in the mean [°C]
    double inner_c = 0.0;        //!< where it meets wall, lid or floor, at the hottest spot [°C]
    double floor_inner_c = 0.0;  //!< where it meets the floor, at the hottest spot [°C]
    double wall_c = 0.0;         //!< of the outer wall at its hottest spot [°C]
    double lid_c = 0.0;          //!< outer surface of the lid at its hottest spot [°C]
    double floor_c = 0.0;        //!< of what the store stands on, at its hottest spot [°C]
};

/// Closed form for `power_w` into all legs together, within about 7 % of the rise of a solution in
/// three dimensions from 1 to 8 h (tests print it):
/// `Theta(Ts) = Theta(Tb) + q'/(2 pi) sum_j (asinh(L/2 d_j) - asinh(L/2 rho_j))`,
/// `rho_j = (d_j^-4 exp(-2 E1(d_j²/4at)) + rm^-4)^(-1/4)` on a bulk of one time constant: each leg
/// a line source, E1 the exponential integral; `rho_0 = ((d_0² + 2.246 a t)^-2 + rm^-4)^(-1/4)` at
/// the leg's own surface. The rod's own heat capacity slows the first minutes. Throws InvalidInput,
/// as all of a charge here do, for numbers that have no meaning. @cite carslaw-jaeger
/// Hot spots cost most of the time (`with_lid`): without them `lid_c` and `floor_c` are the air's,
/// and `wall_c` is the mean's rise times its concentration.
[[nodiscard]] BedTemperatures bed_temperatures(const BedCharge& charge, double power_w,
                                               bool with_lid = true);

/// The sheath of the same by itself; at less cost.
[[nodiscard]] double sheath_only_c(const BedCharge& charge, double power_w);
/// The bulk of the same by itself; at less cost. Its wall may be colder than the sheath only.
struct BulkTemperatures {
    double bed_mean_c = 0.0;
    double edge_c = 0.0;   //!< where the bed meets its wall, in the mean [°C]
    double inner_c = 0.0;  //!< the same at the hottest spot [°C]
    double wall_c = 0.0;   //!< outside, there [°C]
};
[[nodiscard]] BulkTemperatures bulk_only(const BedCharge& charge, double power_w);

/// What a limit on the lid is counted on to sense [°C]: less than the mean of the lid, for nobody
/// tells that it lies over the legs (tests print by how much).
[[nodiscard]] double sensed_lid_c(const BedCharge& charge, double power_w);

/// A sheath of `sheath_c` in touching sand, where the sand has settled `gap_m` away: as hot again
/// as it takes to cross that gap; a little much, for the sand's surface grows with the gap [°C].
[[nodiscard]] double settled_sheath_c(const BedCharge& charge, double power_w, double sheath_c,
                                      double gap_m);

/// The rise of a verdict over that of the closed form: what it may be short of.
inline constexpr double verdict_factor = 1.10;

/// Largest power into all legs whose sheath, its rise times `factor`, stays at `limit_c` [W]; 0
/// where the air is hotter.
[[nodiscard]] double largest_power_w(const BedCharge& charge, double limit_c,
                                     double factor = verdict_factor);

/// Hours until the sheath reaches a limit at constant power; nothing if it never does within
/// `longest_h`.
[[nodiscard]] std::optional<double> hours_to_limit(const BedCharge& charge, double power_w,
                                                   double limit_c, double longest_h = 1000.0);

/// Temperature in the bed at a distance from the nearest leg, at half its length, at the end of the
/// charge [°C].
[[nodiscard]] double bed_temperature_c(const BedCharge& charge, double power_w, double distance_m);

/// How much hotter the coil is than its sheath [K]: `q'/(2 pi k) ln(r_sheath_inner/r_coil)` through
/// magnesia of 2.3 W/mK, radii 0.85 and 0.4 of the sheath's. Dimensions from memory.
[[nodiscard]] double coil_above_sheath_k(double w_per_m);

/// Temperature of a sheath in still air that gives off so many watts a metre [°C]: dry firing
/// outside the bed. @cite churchill-chu-1975
[[nodiscard]] double sheath_in_air_c(double diameter_m, double w_per_m, double emissivity,
                                     double air_c);

}  // namespace heatmatch
