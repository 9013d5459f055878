#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/heat/wire_temperature.hpp"
#include "heatmatch/match/circuit/bank.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"
#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/array.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

namespace heatmatch {

/// A run of wire with the parts it is made of.
struct RunParts {
    WireRun run{};
    std::optional<Wire> wire{};  //!< nothing where none of the catalog would do
    std::optional<Insulation> insulation{};
    std::optional<Connector> connector{};
    double conductor_c = 50.0;  //!< that its ohms hold at [°C]
    /// In the brightest sun, if it was computed when the run was laid.
    std::optional<ConductorTemperature> brightest{};

    /// Ohms there and back, with the joints [ohm]; none of wire where none was found.
    [[nodiscard]] double loop_ohm() const { return loop_ohm_at(conductor_c); }
    /// The same with the conductor at another temperature.
    [[nodiscard]] double loop_ohm_at(double celsius) const;
    /// Temperature of its conductor at a current: the one at hand, else computed; nothing where the
    /// surroundings are not stated.
    [[nodiscard]] std::optional<ConductorTemperature> temperature(double current_a) const;

    friend bool operator==(const RunParts&, const RunParts&) = default;
};

/// A device with its control.
struct PlacedDevice {
    Device device{};
    Control control{};
    bool anywhere = false;  //!< it may sense any place: the careful case of an unstated one

    friend bool operator==(const PlacedDevice&, const PlacedDevice&) = default;
};

/// One array feeding one bank.
struct Circuit {
    OwnedPanels owned{};
    PanelInService panel{};
    Hookup panels{};
    Bank bank{};
    std::vector<RunParts> runs{};
    std::vector<PlacedDevice> devices{};
    std::shared_ptr<const BankHeat> heat{};  //!< of the bank in its store; null without a store

    /// Ohms of wire and joints as the whole array sees them [ohm].
    [[nodiscard]] double wire_ohm() const;
    /// The same with every conductor at one temperature: a cold wire leaves more to the elements.
    [[nodiscard]] double wire_ohm_at(double celsius) const;
    /// Voc of the array on the coldest morning [V].
    [[nodiscard]] double cold_voltage_v() const;
    /// Isc of the array in full sun with the most light behind it, larger of label and measured
    /// [A].
    [[nodiscard]] double short_circuit_current_a() const;
    /// The share of the array's current that a run carries.
    [[nodiscard]] double current_share(const WireRun& run) const;
    /// The last run that carries the bank or a branch, else the last of all; null without runs.
    [[nodiscard]] const RunParts* run_at_element() const;
    /// `barn pair 2S1P into storage-rod-1000-240 1S2P`
    [[nodiscard]] std::string title() const;
};

/// Checks a circuit made or changed by a program as what it was made of would be: the site it is
/// judged at, panels, bank, runs, devices and store. Throws InvalidInput.
void check_circuit(const Circuit& circuit, const Site& site);

/// Operating point of the circuit at the bank, its wire included.
struct Delivered {
    double irradiance_w_m2 = 0.0;     //!< [W/m2]
    double cell_temperature_c = 0.0;  //!< [°C]
    double power_low_w = 0.0;         //!< [W]
    double power_w = 0.0;             //!< into the bank, typical [W]
    double power_high_w = 0.0;        //!< [W]
    double voltage_v = 0.0;           //!< at the bank [V]
    double current_a = 0.0;           //!< of the bank [A]
    double wire_w = 0.0;              //!< lost in wire and joints [W]
    double maximum_power_w = 0.0;     //!< the array could give [W]

    /// Share of the array's maximum that reaches the bank.
    [[nodiscard]] double harvest_fraction() const;
};

/// Ohms of a bank that take the most power from an array through that much wire [ohm].
[[nodiscard]] double bank_ohm_of_most_power(const ArrayCurve& curve, double wire_ohm);

/// What the circuit delivers with today's panels and typical ohms; the band takes the ends of
/// panel current and element ohms.
[[nodiscard]] Delivered deliver(const Circuit& circuit, double irradiance_w_m2,
                                double cell_temperature_c);

}  // namespace heatmatch
