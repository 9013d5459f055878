#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "heatmatch/base/choice.hpp"

namespace heatmatch {

/// Governing wiring code.
enum class WiringCode { nec, iec };
inline constexpr auto wiring_code_words = std::to_array<std::string_view>({"nec", "iec"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(WiringCode) {
    return wiring_code_words;
}

/// Installation method, by the tables of current: alone in free air, touching others, in a raceway,
/// in thermal insulation, in the ground.
enum class LayingMethod { free_air, bundle, raceway, thermal_insulation, earth };
inline constexpr auto laying_method_words = std::to_array<std::string_view>(
    {"free air", "bundle", "raceway", "thermal insulation", "earth"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(LayingMethod) {
    return laying_method_words;
}

/// Group of tables for a wire.
enum class AmpacityGroup { single, cable, pv_wire, pv_cable, cord };

/// One column of a published table of currents: one installation method, one conductor temperature.
/// A cell that was not seen is absent.
struct AmpacityColumn {
    WiringCode code = WiringCode::nec;
    LayingMethod method = LayingMethod::free_air;
    AmpacityGroup group = AmpacityGroup::single;
    double ambient_c = 30.0;
    double conductor_c = 0.0;
    std::string_view source{};        //!< key of catalog/sources.json, which states how it was seen
    std::span<const double> sizes{};  //!< AWG numbers (0 for 1/0, -1 for 2/0), or mm2
    std::span<const double> currents_a{};
};

/// All columns. The NEC counts up to three loaded conductors, IEC and EN two.
[[nodiscard]] std::span<const AmpacityColumn> ampacity_columns();

/// Table value for a wire before any correction.
struct TabulatedAmpacity {
    double current_a = 0.0;
    double ambient_c = 0.0;    //!< of the table
    double conductor_c = 0.0;  //!< of its column
    std::string_view source{};
};

/// Current of a copper wire by the column with the highest conductor temperature that its
/// insulation and metal withstand (`rating_c`). A size between two of the table counts as the
/// smaller one, which is conservative. Empty where the table has no cell: values are not
/// interpolated. Tables of PV cable apply to a conductor at 120 °C, whatever is permitted for
/// years. @cite nec-310-16 @cite nec-310-17 @cite nec-310-18 @cite nec-310-19 @cite nec-690-31
/// @cite nec-400-5 @cite iec-60364-5-52 @cite en-50618
[[nodiscard]] std::optional<TabulatedAmpacity> tabulated_ampacity(WiringCode code,
                                                                  LayingMethod method,
                                                                  AmpacityGroup group,
                                                                  double area_mm2, double rating_c);

/// Current by the column with the lowest conductor temperature, for insulation with a limit below
/// all columns; ambient_factor() corrects it for that.
[[nodiscard]] std::optional<TabulatedAmpacity> coolest_ampacity(WiringCode code,
                                                                LayingMethod method,
                                                                AmpacityGroup group,
                                                                double area_mm2);

}  // namespace heatmatch
