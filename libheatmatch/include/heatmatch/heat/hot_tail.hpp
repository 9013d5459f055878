#pragma once

#include <limits>
#include <optional>
#include <string_view>
#include <vector>

#include "heatmatch/heat/fin_chain.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/insulation.hpp"
#include "heatmatch/parts/wire.hpp"
#include "heatmatch/setting/surroundings.hpp"

namespace heatmatch {

/// Where the terminal of an element is.
enum class TerminalPlace {
    buried,   //!< in the bed, with part of the wire
    outside,  //!< through the wall, in the run's surroundings
    in_box    //!< through the wall, in a closed terminal box
};

/// The end of one element and the wire connected to it. Lengths follow the element outward: heated
/// part, cold part in the bed, wall, sheath beyond the wall, terminal, wire.
struct HotTail {
    double sheath_c = 0.0;  //!< of the heated part far from its end [°C]
    double bed_c = 0.0;     //!< of the bed around this end [°C]
    /// Low end of dry sand. A buried terminal is hotter the less the bed conducts. One outside, on
    /// a short cold length or a copper sheath, is cooler by up to about 15 K: compute both ends.
    double bed_conductivity_w_mk = 0.20;
    double air_c = 25.0;  //!< around terminal and wire [°C]
    double sheath_diameter_mm = 8.0;
    /// Metal of the tube, see sheath_conductivity_w_mk().
    double sheath_conductivity_w_mk = 19.0;
    double sheath_emissivity = 0.7;
    double cold_length_m = 0.0;  //!< unheated length in the bed
    TerminalPlace place = TerminalPlace::outside;
    double wall_m = 0.0;     //!< wall or lagging crossed; no heat loss is counted there
    double beyond_m = 0.03;  //!< sheath from the wall to the terminal, unless it is buried
    double buried_wire_m = std::numeric_limits<double>::infinity();  //!< of a buried terminal
    double box_wire_m = 0.05;       //!< wire inside the terminal box
    double box_area_m2 = 0.03;      //!< outer surface of the terminal box
    double box_u_w_m2k = 5.0;       //!< from the air in the box to the air around it, from memory
    double contact_ohm = 0.0;       //!< of the terminal; grows with age
    double current_a = 0.0;         //!< through wire and terminal
    std::optional<double> pin_a{};  //!< through the element itself, where it differs
    std::optional<double> sheath_loss_w_mk{};  //!< in air; computed from convection and radiation
                                               //!< if not given
    std::optional<double> wire_loss_w_mk{};    //!< in air; computed from convection and radiation
                                               //!< if not given
    /// Surroundings of the run from the wall or box on; their air is `air_c`. A cavity and the bed
    /// also cover the sheath beyond the wall; conduit and ground reduce its heat loss as they do
    /// that of a wire; the sun heats it. Wind and bundle apply to the wire only.
    Surroundings around{};
    /// Lagging outside the wall that sheath and wire pass through, unless buried or in a box. Its
    /// temperature falls linearly from `lagging_hot_c` inside to that of the air outside.
    double lagging_m = 0.0;
    std::optional<double> lagging_hot_c{};  //!< as the bed around this end if not given [°C]
};

/// Temperatures along a hot tail.
struct TailTemperatures {
    double heated_end_c = 0.0;         //!< where the heated length ends [°C]
    std::optional<double> wall_c{};    //!< where the sheath leaves the bed, unless buried [°C]
    double terminal_c = 0.0;           //!< [°C]
    std::optional<double> box_c{};     //!< air in the terminal box [°C]
    double far_wire_c = 0.0;           //!< temperature of the wire far from the terminal [°C]
    double air_c = 0.0;                //!< assumed around terminal and wire [°C]
    double terminal_distance_m = 0.0;  //!< from the end of the heated length to the terminal
    bool runaway = false;              //!< the wire has no steady temperature; the other values
                                       //!< are invalid
    std::vector<Assumption> assumed{};

    /// Conductor of the wire at a distance from the terminal [°C].
    [[nodiscard]] double wire_c(double from_terminal_m) const;
    /// Distance from the terminal along the wire beyond which it stays at or below the limit: an
    /// insulation of that limit is suitable from there on. Empty where it is suitable nowhere.
    [[nodiscard]] std::optional<double> distance_for_limit_m(double limit_c) const;

    std::optional<FinChain> chain{};  //!< none at thermal runaway
    std::size_t first_wire = 0;       //!< segment of the chain that begins at the terminal
};

/// Solves the chain of exact fin elements from the heated length (`q' = g (Ts - Tbed)`, infinite)
/// to the wire (infinite). In the bed `g = 2 pi k/ln(0.1 m/r)`; beyond it sheath and wire lose heat
/// as in conductor_temperature() for that kind of surroundings. In air this is Churchill-Chu and
/// radiation, for the sheath at its mean temperature, for the wire at the mean of each of five
/// pieces of 0.15 to 1 times `sqrt(kA/g)`; beyond those the coefficient at which an infinite wire
/// has the temperature of conductor_temperature(). In lagging and cavities 0.1 m of mineral wool
/// (0.04 W/mK). Joule heat grows with temperature. Bed and wall conduct at one temperature. Within
/// 5 % of the rise of the same equations solved in fine cells. Throws InvalidInput. @cite
/// churchill-chu-1975
[[nodiscard]] TailTemperatures tail_temperatures(const HotTail& tail, const Wire& wire,
                                                 const Insulation* insulation);

/// Conductivity [W/mK] of the metal of a sheath of the catalog when hot (about 300 °C, copper 200
/// °C), from memory: copper 385, carbon steel and iron 45, copper-nickel 28, chrome steel 25,
/// stainless 19, alloys 800, 840 and 600 18. Empty for others. @cite incropera
[[nodiscard]] std::optional<double> sheath_conductivity_w_mk(std::string_view sheath_id);

/// Conductivity times cross-section of a tubular element [W m/K]: tube wall 0.0875 D, packed
/// magnesia of 2.3 W/mK, and in the cold part a steel pin of 0.2875 D and 50 W/mK (0.7 and 2.3 mm
/// at 8 mm); the wire of the coil is neglected. Proportions from memory.
[[nodiscard]] double sheath_ka_w_m_k(double diameter_mm, double conductivity_w_mk, bool cold_pin);

}  // namespace heatmatch
