#pragma once

#include <optional>
#include <string>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// What the elements of a circuit are exposed to in bright cold: the brightest sun of the site on
/// cells at record low + 20 K, panels as new, the ohms of each element at whichever end is worse.
struct Extremes {
    double element_power_w = 0.0;    //!< largest of one element [W]
    double element_voltage_v = 0.0;  //!< largest across one element [V]
    double survivor_power_w = 0.0;   //!< of one element when a parallel branch has opened [W]
    double current_a = 0.0;          //!< largest of the array [A]
};

/// Cells are that much above the air on the brightest cold morning [K]; common practice, no source.
inline constexpr double bright_cold_rise_k = 20.0;

/// The panel as its brightest: new, or as measured where that is more.
[[nodiscard]] SingleDiode brightest_panel(const PanelInService& panel);
/// The bright-cold curve of an array, computed once for all its banks.
[[nodiscard]] ArrayCurve bright_curve(const PanelInService& panel, Hookup panels, const Site& site);
[[nodiscard]] Extremes extremes(const ArrayCurve& bright, const Bank& bank, double wire_ohm);
/// Largest watts of one element of that hook-up, its own ohms and those of the others at whichever
/// ends are worst [W].
[[nodiscard]] double largest_element_power_w(const ArrayCurve& bright, Hookup hookup,
                                             double wire_ohm, const ElementResistance& each);
/// What a wire of the site is at its coldest [°C], before current and sun warm it: its ohms are
/// then the least, and the elements get the most.
[[nodiscard]] double coldest_wire_c(const Site& site);
/// The same for a circuit with its bank and its runs, their wire at its coldest.
[[nodiscard]] Extremes bright_extremes(const Circuit& circuit, const Site& site);

/// What a live part may have that nothing covers, in damp places too [V].
/// @cite iec-60364-4-41
inline constexpr double bare_wire_v = 30.0;
/// Whether the elements of a bank are live wire without a sheath.
[[nodiscard]] bool is_bare(const Bank& bank);

/// What one bank may see, inverted once from its parts: the screen compares numbers only.
struct BankLimits {
    std::optional<double> element_power_w{};   //!< rated watts of one element; more in a liquid it
                                               //!< was made for [W]
    std::optional<double> sheath_voltage_v{};  //!< rated direct volts, peak of rated alternating
                                               //!< ones; bare wire: what may be touched [V]
    std::optional<double> terminal_c{};        //!< of its terminals [°C]
};
/// Share of its rating that an element made for a liquid may take in one: a warning above the first
/// and a danger above the second, for there its sheath and the liquid decide. Common practice, no
/// source: mains volts and the tolerance of watts go as far.
inline constexpr double rated_share_in_liquid = 1.05;
inline constexpr double most_share_in_liquid = 1.15;
/// Whether that holds for a bank in its store: a liquid, an element made for one, sizes known.
[[nodiscard]] bool heats_liquid(const Bank& bank, const BankHeat* heat);
/// `heat` is that of the bank in its store, null without one.
[[nodiscard]] BankLimits bank_limits(const Bank& bank, const BankHeat* heat);

/// The worst of the margins whose passing is a danger.
struct Screened {
    double headroom = 1.0;
    std::string reason{};  //!< name of the margin
};
/// Screen of the margins that depend on the bank; the same headrooms as bank_margins() gives.
/// `terminal_c` is the temperature where the wire meets the terminals, if it is known.
[[nodiscard]] Screened screen_bank(const Extremes& extremes, const BankLimits& limits,
                                   double cold_voltage_v, std::optional<double> terminal_c);

/// Screen of the margins of an array that has neither runs nor devices: the same headroom and count
/// as array_margins() gives, its bonding left out.
struct ArrayScreened {
    Screened screened{};
    int not_assessed = 0;
    bool doubtful = false;  //!< what is not known may make a danger of it
};
[[nodiscard]] ArrayScreened screen_array(const PanelInService& panel, Hookup panels,
                                         const Site& site);

/// The same over margins already at hand.
[[nodiscard]] Screened screen_margins(const std::vector<Margin>& margins);

/// Temperature where the wire meets the elements [°C]: the hottest conductor of the runs that carry
/// the bank or one of its branches; nothing where none states its surroundings. Heat that comes
/// down the element's own pin is not counted.
[[nodiscard]] std::optional<double> terminal_temperature_c(const Circuit& circuit,
                                                           const Site& site);

}  // namespace heatmatch
