#pragma once

#include <optional>
#include <vector>

#include "heatmatch/heat/wire_temperature.hpp"

namespace heatmatch {

/// Wire as a cylinder of metal in a cylinder of insulation.
struct WireGeometry {
    double outer_m = 0.0;
    double insulation_k_m_per_w = 0.0;  //!< thermal resistance of one metre [K m/W]
};
[[nodiscard]] WireGeometry wire_geometry(const Wire& wire, const Insulation* insulation,
                                         std::vector<Assumption>& assumed);

/// Lagging, and a cavity filled with it: mineral wool [W/mK].
inline constexpr double lagging_w_mk = 0.04;
/// Absorptance of the surface of a wire or a sheath.
inline constexpr double sun_absorbed = 0.9;

/// Heat transfer at the surface of a wire.
struct WireCooling {
    double around_c = 0.0;
    double current_share = 1.0;               //!< relative to a single wire in free air
    std::optional<double> solid_k_m_per_w{};  //!< through bed or filled cavity; else into air
    double irradiance_w_m2 = 0.0;
    double wind_m_s = 0.0;
};
/// Empty where the temperature around the wire is not known.
[[nodiscard]] std::optional<WireCooling> wire_cooling(const Wire& wire,
                                                      const WireGeometry& geometry,
                                                      const Surroundings& surroundings,
                                                      const BedAround& bed,
                                                      std::vector<Assumption>& assumed);

/// Heat per meter of surface to air by convection and radiation, eps 0.9 [W/m].
[[nodiscard]] double heat_to_air(double outer_m, double surface_c, double air_c, double wind_m_s,
                                 double emissivity = 0.9);

/// Thermal resistance per meter of material between a wire's surface and 0.1 m [K m/W].
[[nodiscard]] double shell_k_m_per_w(double outer_m, double conductivity_w_mk);

}  // namespace heatmatch
