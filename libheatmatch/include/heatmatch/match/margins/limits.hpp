#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Load on one element of an unlike bank, its own resistance and those of the others each at the
/// worse end.
struct UnlikeLoad {
    double power_w = 0.0;    //!< [W]
    double voltage_v = 0.0;  //!< across it [V]
    /// Its power after each element of the bank in turn has opened; 0 for its own, and for those
    /// without which it has no current [W].
    std::vector<double> with_open_w{};

    /// The largest of these [W].
    [[nodiscard]] double survivor_power_w() const;
};

/// Load on the elements of a circuit in cold, bright weather: the brightest irradiance of the site,
/// cells at record low + 20 K, panels as new, each element's resistance at its worse end.
struct Extremes {
    double element_power_w = 0.0;    //!< largest power of one element [W]
    double element_voltage_v = 0.0;  //!< largest voltage across one element [V]
    double survivor_power_w = 0.0;   //!< power of one element after a parallel branch has opened
                                     //!< [W]
    double current_a = 0.0;          //!< largest current of the array [A]
    /// Of each element of an unlike bank, in its order; the numbers above are the largest of these.
    std::vector<UnlikeLoad> elements{};
};

/// Cell temperature above the air on the brightest cold morning [K]; common practice, no source.
inline constexpr double bright_cold_rise_k = 20.0;

/// The panel at its brightest: as new, or as measured where that is higher.
[[nodiscard]] SingleDiode brightest_panel(const PanelInService& panel);
/// The bright-cold curve of an array, computed once for all its banks.
[[nodiscard]] ArrayCurve bright_curve(const PanelInService& panel, Hookup panels, const Site& site);
/// The load on a bank behind wire. Each branch of an unlike bank has `branch_ohm` more for itself,
/// which `wire_ohm` includes as Circuit::wire_ohm() does.
[[nodiscard]] Extremes extremes(const ArrayCurve& bright, const Bank& bank, double wire_ohm,
                                double branch_ohm = 0.0);
/// Largest power of one element in that hook-up, with its own resistance and that of the others at
/// their worst ends [W].
[[nodiscard]] double largest_element_power_w(const ArrayCurve& bright, Hookup hookup,
                                             double wire_ohm, const ElementResistance& each);
/// Lowest temperature of a wire at the site [°C], before current and sun warm it. Its resistance is
/// then lowest, and the elements receive the most power.
[[nodiscard]] double coldest_wire_c(const Site& site);
/// The same for a circuit with its bank and its runs, with wire at its lowest temperature.
[[nodiscard]] Extremes bright_extremes(const Circuit& circuit, const Site& site);

/// Highest voltage of an uncovered live part, in damp places too [V]. @cite iec-60364-4-41
inline constexpr double bare_wire_v = 30.0;
/// Whether any element of a bank is live wire without a sheath.
[[nodiscard]] bool is_bare(const Bank& bank);

/// Limits of one bank, derived once from its parts, so that the screen only compares numbers.
struct BankLimits {
    std::optional<double> element_power_w{};   //!< rated power of one element; higher in a liquid
                                               //!< for which it is made [W]
    std::optional<double> sheath_voltage_v{};  //!< rated DC voltage, or peak of rated AC voltage;
                                               //!< for bare wire: touch limit [V]
    std::optional<double> terminal_c{};        //!< of its terminals [°C]
};
/// Share of its rating at which an element made for a liquid gives a warning there, and above the
/// second value a danger: sheath and liquid are the deciding limits. Common practice, no source:
/// mains voltage and power tolerance reach as far.
inline constexpr double rated_share_in_liquid = 1.05;
inline constexpr double most_share_in_liquid = 1.15;
/// Whether that applies to a bank in its store: a liquid, an element made for one, known sizes.
[[nodiscard]] bool heats_liquid(const Bank& bank, const BankHeat* heat);
/// `heat` is that of the bank in its store, null without one.
[[nodiscard]] BankLimits bank_limits(const Bank& bank, const BankHeat* heat);

/// The worst of the margins whose exceedance is a danger.
struct Screened {
    double headroom = 1.0;
    std::string reason{};  //!< name of the margin
};
/// Screen of the margins that depend on the bank; the headrooms equal those of bank_margins().
/// `terminal_c` is the temperature where the wire meets the terminals, if it is known.
[[nodiscard]] Screened screen_bank(const Extremes& extremes, const BankLimits& limits,
                                   double cold_voltage_v, std::optional<double> terminal_c);

/// Screen of the margins of an array without runs or devices; headroom and count equal those of
/// array_margins() without its bonding margin.
struct ArrayScreened {
    Screened screened{};
    int not_assessed = 0;
    bool doubtful = false;  //!< an unknown fact may make it a danger
};
[[nodiscard]] ArrayScreened screen_array(const PanelInService& panel, Hookup panels,
                                         const Site& site);

/// The same for existing margins.
[[nodiscard]] Screened screen_margins(const std::vector<Margin>& margins);

/// Temperature where the wire meets the elements [°C]: the hottest conductor of the runs with the
/// current of the bank or one of its branches; empty where none has stated surroundings. Heat
/// conducted along the element's pin is not counted.
[[nodiscard]] std::optional<double> terminal_temperature_c(const Circuit& circuit,
                                                           const Site& site);

}  // namespace heatmatch
