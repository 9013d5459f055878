#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// Duty of a device.
enum class Duty { breaks_dc, carries_dc, protects_a_string, senses_only };
inline constexpr auto duty_words = std::to_array<std::string_view>(
    {"breaks dc", "carries dc", "protects a string", "senses only"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Duty) {
    return duty_words;
}

/// Where a device senses.
enum class SensedPlace { wall, lid, bed, space };
inline constexpr auto sensed_place_words =
    std::to_array<std::string_view>({"wall", "lid", "bed", "space"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SensedPlace) {
    return sensed_place_words;
}

/// A control at its place in the installation, with its duty.
struct Device {
    std::string part{};  //!< id of a control
    std::string run{};   //!< name of the run it sits in; empty for one outside the circuit
    std::optional<Duty> duty{};
    int poles_used = 1;                          //!< number of its poles that are wired in series
    std::optional<double> set_c{};               //!< set point of a sensing device [°C]
    std::optional<SensedPlace> senses{};         //!< the wall if not stated
    std::vector<std::string> drives{};           //!< ids of the controls that it opens
    std::optional<bool> opens_on_supply_loss{};  //!< opens the circuit if its control supply fails
    std::optional<bool> opens_on_probe_break{};  //!< opens the circuit if its probe breaks
    std::optional<double> set_tolerance_k{};     //!< it may open at set_c plus this [K]
    int owned = 0;                               //!< pieces for this place that need no purchase

    friend bool operator==(const Device&, const Device&) = default;
};
[[nodiscard]] std::span<const Field> device_fields();

}  // namespace heatmatch
