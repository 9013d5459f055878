#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"
#include "heatmatch/parts/ampacity_table.hpp"

namespace heatmatch {

/// Metal of a conductor.
enum class ConductorMetal { copper, nickel_clad_copper, nickel, aluminium };
inline constexpr auto conductor_metal_words =
    std::to_array<std::string_view>({"copper", "nickel-clad copper", "nickel", "aluminium"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ConductorMetal) {
    return conductor_metal_words;
}

/// Skin of the strands of a conductor.
enum class Plating { bare, tin, silver, nickel };
inline constexpr auto plating_words =
    std::to_array<std::string_view>({"bare", "tin", "silver", "nickel"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Plating) {
    return plating_words;
}

/// A single conductor with its insulation, sold by the meter.
struct Wire {
    std::string id{};
    std::string label{};
    std::string marking{};  //!< type letters printed on the jacket
    std::optional<ConductorMetal> conductor{};
    std::optional<Plating> plating{};
    double area_mm2 = 0.0;  //!< of metal; "14 AWG" is understood [mm2]
    std::optional<int> strands{};
    std::optional<double> resistance_ohm_per_km{};  //!< at 20 °C, printed or by a table; takes
                                                    //!< precedence
    std::string insulation{};
    std::optional<double> outer_diameter_mm{};  //!< over the insulation [mm]
    std::optional<double> voltage_rating_v{};   //!< [V]
    std::optional<bool> sunlight_resistant{};
    std::optional<bool> direct_burial{};
    std::optional<double> ampacity_a{};             //!< by the code's table, before correction [A]
    std::optional<double> ampacity_ambient_c{};     //!< air temperature of that table [°C]
    std::optional<double> ampacity_conductor_c{};   //!< conductor temperature of its column [°C]
    std::optional<LayingMethod> ampacity_method{};  //!< installation method to which it applies
    std::string ampacity_source{};
    Provenance provenance{};
    Price price{};  //!< per meter
    std::string notes{};

    friend bool operator==(const Wire&, const Wire&) = default;
};

/// The field table of a wire.
[[nodiscard]] std::span<const Field> wire_fields();

/// Checks across fields: a plating that suits the metal. Throws InvalidInput.
void check_wire(const Wire& wire);

/// Resistance of one meter of conductor [ohm/m]: `rho20 k / A (1 + alpha (T - 20))`, k = 1.02 for
/// strands, where no figure is printed. Copper: rho20 = 1/58 ohm mm2/m, alpha = 0.00393 1/K (@cite
/// iec-60028); nickel-clad copper 1.4 times copper and nickel 0.090 ohm mm2/m, alpha 0.0061 (from
/// memory). Valid for -50..500 °C.
[[nodiscard]] double resistance_ohm_per_m(const Wire& wire, double temperature_c);

/// Temperature above which the bare or plated metal ages by oxidation [°C]: bare and tinned copper
/// 150, silver 200, nickel plate 260, nickel-clad and nickel 450. @cite astm-b33
[[nodiscard]] double conductor_limit_c(const Wire& wire);

/// Diameter over the strands [mm]; a bundle of strands fills 0.75 of its circle.
[[nodiscard]] double conductor_diameter_mm(const Wire& wire);

}  // namespace heatmatch
