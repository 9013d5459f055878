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
    buried,   //!< in the bed, and some of the wire with it
    outside,  //!< through the wall, in what the run lies in
    in_box    //!< through the wall, in a closed terminal box
};

/// The end of one element and the wire on it. Lengths follow the element outwards: heated part,
/// cold part in the bed, wall, sheath beyond the wall, terminal, wire.
struct HotTail {
    double sheath_c = 0.0;  //!< of the heated part far from its end [°C]
    double bed_c = 0.0;     //!< of the bed around this end [°C]
    /// Low end of dry sand. A buried terminal is hotter the less the bed conducts; one outside on a
    /// short cold length or a copper sheath is cooler, by up to some 15 K: try both ends.
    double bed_conductivity_w_mk = 0.20;
    double air_c = 25.0;  //!< around terminal and wire [°C]
    double sheath_diameter_mm = 8.0;
    /// Of the tube's metal, see sheath_conductivity_w_mk().
    double sheath_conductivity_w_mk = 19.0;
    double sheath_emissivity = 0.7;
    double cold_length_m = 0.0;  //!< of the part in the bed that is not heated
    TerminalPlace place = TerminalPlace::outside;
    double wall_m = 0.0;     //!< wall or lagging crossed; counts as losing nothing there
    double beyond_m = 0.03;  //!< sheath from the wall to the terminal, unless buried
    double buried_wire_m = std::numeric_limits<double>::infinity();  //!< of a buried terminal
    double box_wire_m = 0.05;       //!< wire inside the terminal box
    double box_area_m2 = 0.03;      //!< outer surface of the terminal box
    double box_u_w_m2k = 5.0;       //!< from the air in the box to the air around, from memory
    double contact_ohm = 0.0;       //!< of the terminal; grows with age
    double current_a = 0.0;         //!< of wire and terminal
    std::optional<double> pin_a{};  //!< of the element itself, where that is another
    std::optional<double> sheath_loss_w_mk{};  //!< in air; found from convection and radiation
    std::optional<double> wire_loss_w_mk{};    //!< in air; found from convection and radiation
    /// What the run lies in from wall or box on; its air is `air_c`. A cavity and the bed cover the
    /// sheath beyond the wall too, conduit and ground cut its loss as they do a wire's, the sun
    /// heats it; wind and bundle count for the wire only.
    Surroundings around{};
    /// Lagging outside the wall that sheath and wire pass through, unless buried or in a box; as
    /// hot as `lagging_hot_c` inside and as the air outside, even in between.
    double lagging_m = 0.0;
    std::optional<double> lagging_hot_c{};  //!< as the bed around this end if not given [°C]
};

/// Temperatures along a hot tail.
struct TailTemperatures {
    double end_of_heat_c = 0.0;         //!< where the heated length ends [°C]
    std::optional<double> wall_c{};     //!< where the sheath leaves the bed, unless buried [°C]
    double terminal_c = 0.0;            //!< [°C]
    std::optional<double> box_c{};      //!< air in the terminal box [°C]
    double far_wire_c = 0.0;            //!< what the wire tends to [°C]
    double air_c = 0.0;                 //!< that was taken around terminal and wire [°C]
    double terminal_from_heat_m = 0.0;  //!< from the end of the heated length to the terminal
    bool runaway = false;               //!< the wire finds no steady state; nothing else holds
    std::vector<Assumption> assumed{};

    /// Conductor of the wire at a distance from the terminal [°C].
    [[nodiscard]] double wire_c(double from_terminal_m) const;
    /// Distance from the terminal along the wire beyond which it stays at or below the limit: from
    /// there an insulation of that limit would do. Nothing where it would not do anywhere.
    [[nodiscard]] std::optional<double> distance_for_limit_m(double limit_c) const;

    std::optional<FinChain> chain{};  //!< none where it runs away
    std::size_t first_wire = 0;       //!< segment of the chain that begins at the terminal
};

/// Solves the chain of exact fin elements from the heated length (`q' = g (Ts - Tbed)`, endless)
/// to the wire (endless). In the bed `g = 2 pi k/ln(0.1 m/r)`; beyond it sheath and wire lose what
/// conductor_temperature() takes for the kind of surroundings: in air Churchill-Chu and radiation,
/// the sheath's at its mean temperature, the wire's at that of each of five pieces of 0.15 to 1
/// times `sqrt(kA/g)`, then what leaves an endless wire exactly as hot as conductor_temperature()
/// finds; in lagging and cavities 0.1 m of mineral wool (0.04 W/mK). Its own heat grows with its
/// temperature. Bed and wall conduct at one temperature. Within 5 % of the rise of the same
/// equations solved in fine cells. Throws InvalidInput. @cite churchill-chu-1975
[[nodiscard]] TailTemperatures tail_temperatures(const HotTail& tail, const Wire& wire,
                                                 const Insulation* insulation);

/// Conductivity [W/mK] of the metal of a sheath of the catalog when hot (about 300 °C, copper
/// 200 °C), from memory: copper 385, carbon steel and iron 45, copper-nickel 28, chrome steel 25,
/// stainless 19, alloys 800, 840 and 600 18. Nothing for others. @cite incropera
[[nodiscard]] std::optional<double> sheath_conductivity_w_mk(std::string_view sheath_id);

/// Conductivity times cross-section of a tubular element [W m/K]: tube wall 0.0875 D, packed
/// magnesia of 2.3 W/mK, and in the cold part a steel pin of 0.2875 D and 50 W/mK (0.7 and 2.3 mm
/// at 8 mm); the coil's wire is left out. Proportions from memory.
[[nodiscard]] double sheath_ka_w_m_k(double diameter_mm, double conductivity_w_mk, bool cold_pin);

}  // namespace heatmatch
