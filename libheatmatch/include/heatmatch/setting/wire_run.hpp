#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/setting/surroundings.hpp"

namespace heatmatch {

/// Current in a run: that of one string, the array, the bank, or one branch of the bank.
enum class Carried { string, array, bank, branch };
inline constexpr auto carried_words =
    std::to_array<std::string_view>({"string", "array", "bank", "branch"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Carried) {
    return carried_words;
}

/// One stretch of wire with one kind of surroundings; its length is one way.
struct WireRun {
    std::string name{};
    Carried carries = Carried::array;
    double length_m = 0.0;              //!< one way [m]
    std::string wire{};                 //!< id, or `choose`
    std::string connector{};            //!< id of the joints at its ends, if known
    std::optional<double> joint_ohm{};  //!< total of its joints [ohm]
    std::optional<bool> inside{};       //!< lies inside a building
    double owned_m = 0.0;               //!< of this wire, there and back; 0 for a chosen one [m]
    int owned_connectors = 0;           //!< joints of this kind that need no purchase
    Surroundings surroundings{};
    std::string notes{};

    friend bool operator==(const WireRun&, const WireRun&) = default;
    [[nodiscard]] bool chooses() const { return wire == "choose"; }
};
[[nodiscard]] std::span<const Field> wire_run_fields();

}  // namespace heatmatch
