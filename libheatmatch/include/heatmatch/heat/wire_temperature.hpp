#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/insulation.hpp"
#include "heatmatch/parts/wire.hpp"
#include "heatmatch/setting/surroundings.hpp"

namespace heatmatch {

/// How hot a wire gets.
struct ConductorTemperature {
    double conductor_c = 0.0;  //!< [°C]
    double surface_c = 0.0;    //!< of the insulation [°C]
    bool runaway = false;      //!< no steady state: resistance grows faster than cooling
    std::vector<Assumption> assumed{};
};

/// Steady temperature of a single wire by the balance
/// `I² R(Tc) = (Tc - Ts)/Rins = pi Do (h (Ts - Ta) + eps sigma (Ts^4 - Ta^4)) - alpha G Do`
/// in still air (@cite churchill-chu-1975), eps = alpha = 0.9. In conduit the current counts as
/// I/0.7, an estimate; in a bed heat goes through 0.1 m of dry sand of 0.20 W/mK to the stated
/// temperature. Nothing where the temperature around the wire is not stated, or in a cavity.
[[nodiscard]] std::optional<ConductorTemperature> conductor_temperature(
    const Wire& wire, const Insulation* insulation, double current_a,
    const Surroundings& surroundings);

/// The code's ampacity at another ambient temperature: `I sqrt((Tc - Ta)/(Tc - Ta0))` [A]; 0 where
/// the ambient is above the conductor's temperature. Where the insulation's limit_c is below the
/// conductor temperature of the table, it takes the place of the first Tc: `I sqrt((Tl - Ta)/(Tc -
/// Ta0))`. Nothing if the wire has no table value. @cite nec-310
[[nodiscard]] std::optional<double> corrected_ampacity_a(
    const Wire& wire, double ambient_c, std::optional<double> limit_c = std::nullopt);

/// The factor by itself. @cite nec-310
[[nodiscard]] double ampacity_correction(double conductor_c, double ambient_c,
                                         double table_ambient_c);

}  // namespace heatmatch
