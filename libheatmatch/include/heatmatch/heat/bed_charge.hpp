#pragma once

#include <optional>
#include <vector>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/heat_day.hpp"
#include "heatmatch/heat/heated_legs.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// A bed charged by its legs with constant power, starting at the temperature of the air.
struct BedCharge {
    BedFill fill{};
    StoreShell shell{};
    LegLayout legs{};
    double air_c = 20.0;       //!< around the store [°C]
    double hours = 5.0;        //!< per day [h]
    double days = 1.0;         //!< consecutive days
    double gap_m = 0.0;        //!< air around the sheath, where grains have settled away [m]
    double rod_j_m_k = 170.0;  //!< heat capacity of a meter of element: metal and magnesia, 8 mm
                               //!< [J/mK]
    /// Value of legs.wall_concentration() in that shell, if already computed; ignored with others.
    std::optional<double> wall_concentration{};
    /// Legs of other circuits in the same bed. Without power they count as fill.
    std::vector<HeatedLegs> others{};
    /// The moments for which a sheath is judged, at the hottest of them; empty: all legs have their
    /// largest power during the same hours.
    std::vector<HeatMoment> moments{};

    /// Power of the other legs during the hours of the charge with the heat of their day [W].
    [[nodiscard]] double others_w() const;
};

/// Temperatures at the end of the charge.
struct BedTemperatures {
    double sheath_c = 0.0;       //!< of the hottest leg of this circuit [°C]
    double bed_mean_c = 0.0;     //!< of the bulk [°C]
    double edge_c = 0.0;         //!< mean where the bed meets its wall [°C]
    double inner_c = 0.0;        //!< hottest spot where the bed meets wall, lid or floor [°C]
    double floor_inner_c = 0.0;  //!< hottest spot where the bed meets the floor [°C]
    double wall_c = 0.0;         //!< outer wall at its hottest spot [°C]
    double lid_c = 0.0;          //!< outer surface of the lid at its hottest spot [°C]
    double floor_c = 0.0;        //!< base under the store at its hottest spot [°C]
};

/// Closed form for `power_w` into all legs together, within about 7 % of the rise of a solution in
/// three dimensions from 1 to 8 h (the difference is printed by tests): `Theta(Ts) = Theta(Tb) +
/// q'/(2 pi) sum_j (asinh(L/2 d_j) - asinh(L/2 rho_j))`, `rho_j = (d_j^-4 exp(-2 E1(d_j²/4at)) +
/// rm^-4)^(-1/4)` on a bulk of one time constant: each leg a line source, E1 the exponential
/// integral; `rho_0 = ((d_0² + 2.246 a t)^-2 + rm^-4)^(-1/4)` at the leg's own surface. The rod's
/// heat capacity slows the first minutes. Legs of other circuits add their power to the bulk and
/// their own sums; `power_w` is that of this circuit alone. Where moments are given, the sums are
/// those of the hottest one; the hot spots of wall, lid and floor have all local heat at once.
/// Throws InvalidInput for numbers without meaning, as every function of a charge here does. @cite
/// carslaw-jaeger Hot spots (`with_lid`) cost most of the computing time. Without them `lid_c` and
/// `floor_c` equal the air temperature, and `wall_c` is the mean's rise times its concentration.
[[nodiscard]] BedTemperatures bed_temperatures(const BedCharge& charge, double power_w,
                                               bool with_lid = true);

/// The sheath temperature alone; faster.
[[nodiscard]] double sheath_only_c(const BedCharge& charge, double power_w);
/// The bulk temperatures alone; faster. The wall is not limited to the sheath temperature here.
struct BulkTemperatures {
    double bed_mean_c = 0.0;
    double edge_c = 0.0;   //!< mean where the bed meets its wall [°C]
    double inner_c = 0.0;  //!< the same at the hottest spot [°C]
    double wall_c = 0.0;   //!< outer wall at that spot [°C]
};
[[nodiscard]] BulkTemperatures bulk_only(const BedCharge& charge, double power_w);

/// Temperature assumed at the sensor of a limit on the lid [°C]. It is below the mean of the lid,
/// because the sensor's place over the legs is not stated (tests print the difference).
[[nodiscard]] double sensed_lid_c(const BedCharge& charge, double power_w);

/// Temperature of a sheath where sand has settled `gap_m` away, from `sheath_c` in touching sand
/// [°C]. Added is the drop across that gap; slightly high, because the surface of the sand grows
/// with the gap.
[[nodiscard]] double settled_sheath_c(const BedCharge& charge, double power_w, double sheath_c,
                                      double gap_m);

/// Rise in a verdict over the rise of the closed form: covers the error of the closed form.
inline constexpr double verdict_factor = 1.10;

/// Largest power into all legs for which the sheath, its rise times `factor`, stays at `limit_c`
/// [W]; 0 where the air is hotter.
[[nodiscard]] double largest_power_w(const BedCharge& charge, double limit_c,
                                     double factor = verdict_factor);

/// Hours until the sheath reaches a limit at constant power; empty if it does not within
/// `longest_h`.
[[nodiscard]] std::optional<double> hours_to_limit(const BedCharge& charge, double power_w,
                                                   double limit_c, double longest_h = 1000.0);

/// Temperature in the bed at a distance from the nearest leg, at half its length, at the end of the
/// charge [°C].
[[nodiscard]] double bed_temperature_c(const BedCharge& charge, double power_w, double distance_m);

/// How much hotter the coil is than its sheath [K]: `q'/(2 pi k) ln(r_sheath_inner/r_coil)` through
/// magnesia of 2.3 W/mK, radii 0.85 and 0.4 of the sheath's. Dimensions from memory.
[[nodiscard]] double coil_above_sheath_k(double w_per_m);

/// Temperature of a sheath in still air at that heat output per meter [°C]: dry firing outside the
/// bed. @cite churchill-chu-1975
[[nodiscard]] double sheath_in_air_c(double diameter_m, double w_per_m, double emissivity,
                                     double air_c);

}  // namespace heatmatch
