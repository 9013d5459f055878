#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// Kind of surroundings of a wire.
enum class SurroundingsKind { open_air, sunlit, conduit, bed, cavity, buried };
inline constexpr auto surroundings_kind_words =
    std::to_array<std::string_view>({"open air", "sunlit", "conduit", "bed", "cavity", "buried"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SurroundingsKind) {
    return surroundings_kind_words;
}

/// Surroundings of one stretch of wire.
struct Surroundings {
    SurroundingsKind kind = SurroundingsKind::open_air;
    std::optional<double> air_c{};  //!< temperature of the air or the soil around the wire [°C]
    std::optional<double> irradiance_w_m2{};   //!< on a sunlit wire; 1000 if not given [W/m2]
    std::optional<double> wind_m_s{};          //!< across an outdoor wire; still air if not given
                                               //!< [m/s]
    std::optional<int> loaded_conductors{};    //!< touching conductors in the bundle, this one
                                               //!< included
    std::optional<bool> metal_raceway{};       //!< the wire lies in a raceway of metal
    std::optional<double> roof_distance_mm{};  //!< distance of its raceway from a sunlit roof [mm]

    friend bool operator==(const Surroundings&, const Surroundings&) = default;
    [[nodiscard]] static Surroundings open_air(double air_c);
    [[nodiscard]] static Surroundings sunlit(double air_c, double irradiance_w_m2 = 1000.0);
    [[nodiscard]] static Surroundings conduit(double air_c);
};
[[nodiscard]] std::span<const Field> surroundings_fields();

}  // namespace heatmatch
