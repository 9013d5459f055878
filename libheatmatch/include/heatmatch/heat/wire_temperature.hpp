#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/insulation.hpp"
#include "heatmatch/parts/wire.hpp"
#include "heatmatch/setting/surroundings.hpp"

namespace heatmatch {

/// Temperature of a wire.
struct ConductorTemperature {
    double conductor_c = 0.0;  //!< [°C]
    double surface_c = 0.0;    //!< of the insulation [°C]
    bool runaway = false;      //!< no steady state: resistance grows faster than cooling
    std::vector<Assumption> assumed{};

    friend bool operator==(const ConductorTemperature&, const ConductorTemperature&) = default;
};

/// Low end of dry sand, used to assess hot wires [W/mK]; 0.17 to 0.46 was measured. @cite
/// kiyohashi-2003
inline constexpr double dry_sand_low_w_mk = 0.20;

/// Known properties of the bed around a wire in a bed; the run's own temperature takes precedence.
struct BedAround {
    std::optional<double> temperature_c{};      //!< at the wire [°C]
    std::optional<double> conductivity_w_mk{};  //!< 0.20 if not given, the low end of dry sand
};

/// Steady temperature of a wire by the balance `I² R(Tc) = (Tc - Ts)/Rins = pi Do (h (Ts - Ta) +
/// eps sigma (Ts^4 - Ta^4)) - alpha G Do` in still air (@cite churchill-chu-1975) or wind across it
/// (@cite churchill-bernstein-1977), eps = alpha = 0.9. In conduit, in a bundle of touching wires
/// and in the ground the current counts as I/0.7, an estimate; beyond three loaded conductors it is
/// also divided by the code's adjustment (@cite nec-310-reproduction). In a bed heat flows through
/// 0.1 m of dry sand to the stated temperature; in a cavity through 0.1 m of mineral wool (0.04
/// W/mK), a hot bound. Empty where the temperature around the wire is not known.
[[nodiscard]] std::optional<ConductorTemperature> conductor_temperature(
    const Wire& wire, const Insulation* insulation, double current_a,
    const Surroundings& surroundings, const BedAround& bed = {});

/// Largest current [A] at which the same balance keeps the conductor at or below limit_c; 0 where
/// sun and surroundings alone heat it beyond. R(Tc) grows more slowly than the heat loss. So the
/// current grows with the limit, and no smaller current causes thermal runaway.
[[nodiscard]] std::optional<double> ampacity_by_balance_a(const Wire& wire,
                                                          const Insulation* insulation,
                                                          double limit_c,
                                                          const Surroundings& surroundings,
                                                          const BedAround& bed = {});

/// Voltage drop and heat of a run of two wires, out and back: `I R 2L`, `I² R 2L`.
struct RunLoss {
    double drop_v = 0.0;
    double heat_w = 0.0;
};
[[nodiscard]] RunLoss run_loss(const Wire& wire, double one_way_m, double current_a,
                               double conductor_c);

/// The code's ampacity at another ambient temperature: `I sqrt((Tc - Ta)/(Tc - Ta0))` [A]; 0 where
/// the ambient is above the conductor's temperature. Where the insulation's limit_c is below the
/// conductor temperature of the table, it replaces the first Tc: `I sqrt((Tl - Ta)/(Tc - Ta0))`.
/// Empty if the wire has no table value. @cite nec-310
[[nodiscard]] std::optional<double> corrected_ampacity_a(
    const Wire& wire, double ambient_c, std::optional<double> limit_c = std::nullopt);

/// That factor alone. @cite nec-310
[[nodiscard]] double ampacity_correction(double conductor_c, double ambient_c,
                                         double table_ambient_c);

}  // namespace heatmatch
