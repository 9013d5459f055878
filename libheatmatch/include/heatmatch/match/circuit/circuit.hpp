#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/heat/wire_temperature.hpp"
#include "heatmatch/match/circuit/bank.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"
#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/match/circuit/unlike_array.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/array.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

namespace heatmatch {

/// A run of wire with its parts.
struct RunParts {
    WireRun run{};
    std::optional<Wire> wire{};  //!< empty where no wire of the catalog is suitable
    std::optional<Insulation> insulation{};
    std::optional<Connector> connector{};
    double conductor_c = 50.0;  //!< temperature for its resistance [°C]
    /// At the highest irradiance, if it was computed when the wire was chosen.
    std::optional<ConductorTemperature> brightest{};

    /// Resistance there and back, with the joints [ohm]; without wire, of the joints alone.
    [[nodiscard]] double loop_ohm() const { return loop_ohm_at(conductor_c); }
    /// The same with the conductor at another temperature.
    [[nodiscard]] double loop_ohm_at(double celsius) const;
    /// Conductor temperature at a current: stored, or else computed; empty where the surroundings
    /// are not stated.
    [[nodiscard]] std::optional<ConductorTemperature> temperature(double current_a) const;

    friend bool operator==(const RunParts&, const RunParts&) = default;
};

/// A device with its control.
struct PlacedDevice {
    Device device{};
    Control control{};
    bool anywhere = false;  //!< any sensed place is possible: careful case of an unstated one
    int circuits = 1;       //!< number of circuits through its poles

    friend bool operator==(const PlacedDevice&, const PlacedDevice&) = default;
};

/// One array feeding one bank.
struct Circuit {
    OwnedPanels owned{};     //!< of equal panels; empty where `unlike` has them
    PanelInService panel{};  //!< the same
    Hookup panels{};         //!< of unlike panels: the longest string, and how many strings
    std::shared_ptr<const UnlikeArray> unlike{};  //!< panels of several groups; null: equal ones
    Bank bank{};
    std::vector<RunParts> runs{};
    std::vector<PlacedDevice> devices{};
    std::shared_ptr<const BankHeat> heat{};  //!< null without a store
    std::string name{};                      //!< of an existing circuit

    [[nodiscard]] int panel_count() const;
    /// Whether its panels are known.
    [[nodiscard]] bool has_panels() const { return unlike || panel.today.light_current_a > 0.0; }
    /// The panels of the array: each group once.
    [[nodiscard]] std::vector<const PanelInService*> kinds_of_panels() const;
    /// `barn pair 2S1P`, or the notation of an unlike array.
    [[nodiscard]] std::string array_title() const;
    /// `group "barn pair"`, or `array "barn pair x2 + shed"`.
    [[nodiscard]] std::string array_subject() const;
    /// Resistance of wire and joints as a load of the whole array [ohm].
    [[nodiscard]] double wire_ohm() const;
    /// The same with every conductor at one temperature: cold wire leaves more power to the
    /// elements.
    [[nodiscard]] double wire_ohm_at(double celsius) const;
    /// Vmp of the array by its labels, of its weakest string [V].
    [[nodiscard]] double label_vmp_v() const;
    /// Vmp / Imp of the array by its labels; of unlike panels in their present condition [ohm].
    [[nodiscard]] double label_match_ohm() const;
    /// Voc of the array at the record low, of its strongest string [V].
    [[nodiscard]] double cold_voltage_v() const;
    /// Isc of the array at full irradiance with the most rear light, larger of label and measured
    /// [A].
    [[nodiscard]] double short_circuit_current_a() const;
    /// The same of its strongest string [A].
    [[nodiscard]] double string_current_a() const;
    /// Largest current that the other strings can drive backwards into one, without the factors of
    /// the code; 0 for one string [A].
    [[nodiscard]] double fed_current_a() const;
    /// The same into a string [A].
    [[nodiscard]] double fed_current_a(std::size_t string) const;
    /// The least that they are certain to drive into any string in full sun [A].
    [[nodiscard]] double surely_fed_a() const;
    /// Resistance of what every branch of the bank has for itself, wire and joints, with every
    /// conductor at one temperature [ohm].
    [[nodiscard]] double branch_ohm_at(double celsius) const;
    /// Share of the array's current in a run; of unlike strings or branches, in the one with the
    /// most.
    [[nodiscard]] double current_share(const WireRun& run) const;
    /// Share of a run's resistance in that of all wire as a load of the whole array.
    [[nodiscard]] double wire_share(const WireRun& run) const;
    /// The last run that carries the bank or a branch, else the last of all; null without runs.
    [[nodiscard]] const RunParts* run_at_element() const;
    /// `barn pair 2S1P into storage-rod-1000-240 1S2P`
    [[nodiscard]] std::string title() const;
};

/// Checks a circuit made or changed by a program in the same way as its inputs: the site, panels,
/// bank, runs, devices and store. Throws InvalidInput.
void check_circuit(const Circuit& circuit, const Site& site);

/// Throws InvalidInput where a fact of equal panels is read of an array of several groups.
void check_equal_panels(const Circuit& circuit, const char* field);

/// Operating point of the circuit at the bank, wire included.
struct Delivered {
    double irradiance_w_m2 = 0.0;     //!< [W/m2]
    double cell_temperature_c = 0.0;  //!< [°C]
    double power_low_w = 0.0;         //!< [W]
    double power_w = 0.0;             //!< into the bank, typical [W]
    double power_high_w = 0.0;        //!< [W]
    double voltage_v = 0.0;           //!< at the bank [V]
    double current_a = 0.0;           //!< of the bank [A]
    double wire_w = 0.0;              //!< lost in wire and joints [W]
    double maximum_power_w = 0.0;     //!< available from the array [W]

    /// Share of the array's maximum that reaches the bank.
    [[nodiscard]] double harvest_fraction() const;
};

/// Bank resistance that absorbs the most power from an array through that wire resistance [ohm].
[[nodiscard]] double bank_ohm_of_most_power(const ArrayCurve& curve, double wire_ohm);

/// Power of the circuit with panels in their present condition and typical resistance; the band
/// includes the ends of panel current and element resistance.
[[nodiscard]] Delivered deliver(const Circuit& circuit, double irradiance_w_m2,
                                double cell_temperature_c);

}  // namespace heatmatch
