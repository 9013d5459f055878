#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/interpolation.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/medium.hpp"

namespace heatmatch {

/// Conductivity of a fill over temperature, with its integral (the Kirchhoff variable), in which
/// steady conduction is linear: `Theta(T) = integral of k from 293.15 K to T`.
class Conductivity {
  public:
    /// Dry grains: `k = k20 (T/293.15)^0.25 + C d (T^3 - 293.15^3)`, C = 1.856e-7 W/m2K4 (radiation
    /// between grains of emissivity 0.9), T in K. Scaled at 20 °C it is at most 4 % above the
    /// packed-bed law for quartz sand of 0.5 mm, 9 % at 0.2 mm, for 20..900 °C (printed by tests).
    /// Below 20 °C C d is limited to half of k20. @cite zehner-schlunder-1970 @cite
    /// bauer-schlunder-1978
    [[nodiscard]] static Conductivity of_grains(double k20_w_mk, double grain_mm);
    /// Measured values, piecewise linear, times a factor; constant beyond the ends.
    [[nodiscard]] static Conductivity of_table(const std::vector<TablePoint>& table,
                                               double factor = 1.0);
    [[nodiscard]] static Conductivity constant(double k_w_mk);

    [[nodiscard]] double at(double t_k) const;     //!< [W/mK]
    [[nodiscard]] double theta(double t_k) const;  //!< [W/m]
    /// The temperature at that value of the integral [K], within 1..6000 K.
    [[nodiscard]] double temperature_k(double theta_w_m) const;
    /// Mean between two temperatures [W/mK].
    [[nodiscard]] double mean(double a_k, double b_k) const;

  private:
    struct Point {
        double t_k = 0.0;
        double k_w_mk = 0.0;
        double theta_w_m = 0.0;
    };
    double k20_w_mk_ = 0.0;
    double radiation_ = 0.0;       //!< C d [W/mK4]
    std::vector<Point> points_{};  //!< of a table; empty: the law
};

/// Heat capacity over temperature, with its integral.
class HeatCapacity {
  public:
    explicit HeatCapacity(const std::vector<TablePoint>& table_j_kgk = {});
    [[nodiscard]] double at(double t_k) const;        //!< [J/kgK]
    [[nodiscard]] double enthalpy(double t_k) const;  //!< above 293.15 K [J/kg]
    /// Mean between two temperatures [J/kgK].
    [[nodiscard]] double mean(double a_k, double b_k) const;

  private:
    Conductivity table_;  // the same piecewise linear integral
};

/// Low, typical or high end of what is known of a conductivity.
enum class ConductivityEnd { low, typical, high };
inline constexpr auto conductivity_end_words =
    std::to_array<std::string_view>({"low", "typical", "high"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ConductivityEnd) {
    return conductivity_end_words;
}

/// A fill as the heat model uses it.
struct BedFill {
    Conductivity conductivity = Conductivity::constant(0.27);
    HeatCapacity heat_capacity{};
    double density_kg_m3 = 0.0;
    std::vector<Assumption> assumed{};

    /// [J/m3K] between two temperatures.
    [[nodiscard]] double mean_capacity_j_m3k(double a_k, double b_k) const {
        return density_kg_m3 * heat_capacity.mean(a_k, b_k);
    }
};

/// A dry fill, or a moist one if stated and known, at one end of its conductivity. Unknown ends are
/// 0.75 and 1.3 times the typical value, as in dry sand; an unknown grain size is 0.5 mm; a moist
/// fill of unknown conductivity counts as dry. Assumptions are listed.
[[nodiscard]] BedFill bed_fill(const Medium& medium, ConductivityEnd end, bool moist = false);

/// Warnings about a fill: the conductivity of moist ground stated for a dry bed.
[[nodiscard]] Sentences fill_warnings(const Medium& medium);

}  // namespace heatmatch
