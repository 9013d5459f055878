#pragma once

#include <span>

#include "heatmatch/solar/vector_width.hpp"

namespace heatmatch {

inline constexpr double stc_irradiance_w_m2 = 1000.0;
inline constexpr double stc_temperature_c = 25.0;
inline constexpr double boltzmann_ev_per_k = 8.617333262e-05;  //!< CODATA 2018, as in pvlib
inline constexpr double silicon_band_gap_ev = 1.121;
inline constexpr double band_gap_per_k = -0.0002677;  //!< relative change of the gap [1/K]

/// Where a load line crosses an I-V curve.
struct OperatingPoint {
    double voltage_v = 0.0;  //!< [V]
    double current_a = 0.0;  //!< [A]
    double power_w = 0.0;    //!< [W]
};

/// The I-V curve of a panel at one irradiance and cell temperature: `I = IL - I0 (exp((V + I Rs)/a)
/// - 1) - (V + I Rs) Gsh`. A plain value; all members may be called from several threads.
struct DiodeCurve {
    double light_current_a = 0.0;        //!< IL [A]
    double ln_saturation_current = 0.0;  //!< ln(I0 / 1 A): I0 itself may underflow
    double series_resistance_ohm = 0.0;  //!< Rs [ohm]
    double shunt_conductance_s = 0.0;    //!< Gsh [S]: a perfect shunt is 0
    double ideality_v = 1.0;             //!< a = n Ns k T / q [V]

    /// Current at a terminal voltage [A]; negative above the open-circuit voltage.
    [[nodiscard]] double current_a(double voltage_v) const;
    /// Terminal voltage at a current [V]; -infinity for a current that no voltage gives (Gsh = 0).
    [[nodiscard]] double voltage_v(double current_a) const;
    /// Operating point into a resistance [ohm] from 0 to infinity; relative error about 1e-15. R is
    /// added to Rs; three fourth-order Householder steps from min(c/q, ln(c/I0)) always suffice.
    [[nodiscard]] OperatingPoint into_resistance(double resistance_ohm) const;
    /// dP/d(ln R) at the operating point into R [W]; positive below the matching resistance.
    [[nodiscard]] double power_slope_w(double resistance_ohm) const;
    [[nodiscard]] OperatingPoint maximum_power() const;
    [[nodiscard]] double open_circuit_voltage_v() const;
    [[nodiscard]] double short_circuit_current_a() const;

    friend bool operator==(const DiodeCurve&, const DiodeCurve&) = default;
};

/// Single-diode parameters of a panel at 1000 W/m2 and 25 °C, translated to other conditions as
/// De Soto does; series resistance may follow the temperature. @cite de-soto-2006
struct SingleDiode {
    double light_current_a = 0.0;        //!< [A]
    double ln_saturation_current = 0.0;  //!< ln(I0 / 1 A)
    double series_resistance_ohm = 0.0;  //!< [ohm]
    double shunt_conductance_s = 0.0;    //!< [S]
    double modified_ideality_v = 1.0;    //!< n Ns k T / q [V]
    double alpha_isc_a_per_k = 0.0;      //!< applied to the light current [A/K]
    double band_gap_ev = silicon_band_gap_ev;
    double band_gap_per_k = heatmatch::band_gap_per_k;  //!< relative change of the gap [1/K]
    double series_resistance_per_k = 0.0;  //!< relative change of Rs, floored at a tenth [1/K]

    /// The curve at an irradiance [W/m2] and cell temperature [°C]:
    /// `IL = G/1000 (IL + alpha dT)`, `Gsh = Gsh G/1000`, `a = a T/298.15`,
    /// `I0 = I0 (T/298.15)^3 exp(Eg(25)/(k 298.15) - Eg(T)/(k T))`, `Eg(T) = Eg (1 + C dT)`.
    /// No light gives a curve without current. Valid for -60..110 °C. @cite de-soto-2006
    [[nodiscard]] DiodeCurve at(double irradiance_w_m2, double cell_temperature_c) const;

    /// The panel with all currents and all voltages multiplied: a shaded or aged panel has less
    /// current, one with a bypassed section less voltage.
    [[nodiscard]] SingleDiode scaled(double current_factor, double voltage_factor) const;
};

/// Parameters of many curves side by side, as arrays of equal length.
struct DiodeCurves {
    std::span<const double> light_current_a{};
    std::span<const double> ln_saturation_current{};
    std::span<const double> series_resistance_ohm{};
    std::span<const double> shunt_conductance_s{};
    std::span<const double> ideality_v{};
};

/// Largest powers of many curves [W]; both spans must have the same length.
void maximum_powers(const DiodeCurves& curves, std::span<double> power_w,
                    VectorWidth width = VectorWidth::automatic);

/// Operating points of many curves into as many resistances; writes voltage [V] and current [A].
/// All spans must have the same length.
void operating_points(const DiodeCurves& curves, std::span<const double> resistance_ohm,
                      std::span<double> voltage_v, std::span<double> current_a,
                      VectorWidth width = VectorWidth::automatic);

}  // namespace heatmatch
