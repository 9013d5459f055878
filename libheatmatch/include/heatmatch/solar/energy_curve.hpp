#pragma once

#include <memory>
#include <span>
#include <vector>

#include "heatmatch/solar/plane_nodes.hpp"
#include "heatmatch/solar/single_diode.hpp"
#include "heatmatch/solar/vector_width.hpp"
#include "heatmatch/solar/weather_nodes.hpp"

namespace heatmatch {

/// An array of unlike panels under the nodes of its planes.
struct PlacedArray {
    MixedArray array{};
    std::vector<PanelPlace> places{};    //!< of each panel, string by string
    std::vector<WeatherNodes> planes{};  //!< with the same hours, of plane_nodes()

    /// The curve in a node.
    [[nodiscard]] MixedArrayCurve at(std::size_t node) const;
};

/// Largest values of one panel over the weather of a curve, into one resistance.
struct LargestPoint {
    double power_w = 0.0;    //!< [W]
    double voltage_v = 0.0;  //!< [V]
    double current_a = 0.0;  //!< [A]
};

/// Values and slopes at equal steps of ln R, with the polynomials between them. Beyond its ends it
/// follows the behavior of panels: towards 0 ohm the current is constant and the energy falls
/// linearly in R (to 1e-3 of a year's energy), towards infinity the voltage is constant and it
/// falls in 1/R (up to 4 % low).
struct CurveTable {
    double ln_first = 0.0;  //!< ln of the first resistance
    double step = 1.0;      //!< of ln R
    double per_step = 1.0;  //!< reciprocal of step
    const double* value = nullptr;
    const double* slope = nullptr;  //!< d(value)/d(ln R)
    std::size_t count = 0;

    [[nodiscard]] double at(double ln_ohm) const {
        const double position = (ln_ohm - ln_first) * per_step;
        const auto last = static_cast<double>(count - 1);
        if (!(position > 0.0 && position < last)) return beyond(position);
        const auto i = static_cast<std::size_t>(position);
        const double t = position - static_cast<double>(i);
        const double rise = value[i + 1] - value[i];
        const double m0 = step * slope[i];
        const double m1 = step * slope[i + 1];
        return value[i] + t * (m0 + t * (3.0 * rise - 2.0 * m0 - m1 + t * (m0 + m1 - 2.0 * rise)));
    }
    /// An upper bound of at(), faster beyond the ends.
    [[nodiscard]] double at_most(double ln_ohm) const {
        if (ln_ohm <= ln_first) return slope[0] >= 0.0 ? value[0] : at(ln_ohm);
        if (ln_ohm < ln_first + step * static_cast<double>(count - 1)) return at(ln_ohm);
        return slope[count - 1] <= 0.0 ? value[count - 1] : at(ln_ohm);
    }
    /// d(value)/d(ln R).
    [[nodiscard]] double slope_at(double ln_ohm) const;

  private:
    [[nodiscard]] double beyond(double position) const;
    [[nodiscard]] double slope_beyond(double position) const;
};

/// Energy that one panel delivers over some weather, as a function of load resistance: sums over
/// the nodes of the weather at 48 resistances from 0.1 to 30 times `stc_match_ohm` (more in weather
/// that is never bright), between them Hermite polynomials in ln R on the exact slopes (6e-5). The
/// curve of one panel applies to every hook-up: S x P panels into R give S P times delivered_kwh(R
/// P/S).
class EnergyCurve {
  public:
    EnergyCurve() = default;
    /// `stc_match_ohm` is Vmp/Imp of the label; `noct_c` determines how much the sun warms the
    /// cells. Few nodes give sharp knees and need more `points` than a year does. Throws
    /// InvalidInput where `stc_match_ohm` is not positive or `points` is below 2.
    EnergyCurve(const SingleDiode& diode, double noct_c, const WeatherNodes& nodes,
                double stc_match_ohm, VectorWidth width = VectorWidth::automatic,
                std::size_t points = 48);

    /// The same of a whole array of unlike panels, whose Vmp/Imp is `stc_match_ohm`. With the nodes
    /// of two planes within 1e-3 of the sum over every row, from 0.3 to 6 times that resistance.
    /// Throws InvalidInput where places and panels do not match.
    EnergyCurve(PlacedArray placed, double stc_match_ohm, std::size_t points = 64);

    /// Energy into a resistance [kWh].
    [[nodiscard]] double delivered_kwh(double resistance_ohm) const;
    /// The share of it that reaches `resistance_ohm` behind wire of `wire_ohm` [kWh], from the same
    /// curve: E(R + Rw) R/(R + Rw).
    [[nodiscard]] double delivered_kwh(double resistance_ohm, double wire_ohm) const;
    /// dE/d(ln R) [kWh]: positive below the best resistance.
    [[nodiscard]] double slope_kwh(double resistance_ohm) const;
    /// Energy at the maximum power point all the time [kWh].
    [[nodiscard]] double mpp_kwh() const;
    /// Load resistance that absorbs the most energy [ohm].
    [[nodiscard]] double best_resistance_ohm() const;
    /// The same behind wire of `wire_ohm` [ohm].
    [[nodiscard]] double best_resistance_ohm(double wire_ohm) const;
    [[nodiscard]] double stc_match_ohm() const { return stc_match_ohm_; }
    [[nodiscard]] LargestPoint largest(double resistance_ohm) const;
    /// Hours with more than that power into a resistance. Resolution is that of the nodes:
    /// condensed ones are off by up to 4 % of the sunlit hours.
    [[nodiscard]] double hours_above(double resistance_ohm, double power_w) const;
    /// Share of the sunlit hours in which the panel's voltage is below half of its present
    /// open-circuit voltage: near short circuit, where heat falls with the square of the
    /// irradiance. Condensed nodes are off by up to 0.03.
    [[nodiscard]] double near_short_circuit_share(double resistance_ohm) const;

    /// The table behind the curve, for frequent evaluation; valid during the lifetime of the curve.
    [[nodiscard]] CurveTable table() const;
    [[nodiscard]] std::span<const double> grid_ohm() const { return ohm_; }

  private:
    [[nodiscard]] DiodeCurve curve(std::size_t node) const;
    [[nodiscard]] OperatingPoint point(std::size_t node, double resistance_ohm) const;
    [[nodiscard]] double open_circuit_voltage_v(std::size_t node) const;

    double stc_match_ohm_ = 1.0;
    std::vector<double> ohm_{};
    std::vector<double> kwh_{};
    std::vector<double> slope_{};
    std::vector<double> light_current_a_{};
    std::vector<double> ln_saturation_current_{};
    std::vector<double> series_resistance_ohm_{};
    std::vector<double> shunt_conductance_s_{};
    std::vector<double> ideality_v_{};
    std::vector<double> hours_{};
    std::shared_ptr<const PlacedArray> placed_{};  //!< null: of one panel
};

/// Reference for the curve: the sum over every row of the weather [kWh].
[[nodiscard]] double exact_kwh(const SingleDiode& diode, double noct_c, const Weather& weather,
                               double resistance_ohm);

}  // namespace heatmatch
