#pragma once

#include <span>
#include <string>

#include "heatmatch/base/field.hpp"
#include "heatmatch/setting/surroundings.hpp"

namespace heatmatch {

/// One stretch of wire with one surroundings; its length is one way.
struct WireRun {
    std::string name{};
    std::string carries = "array";  //!< string, array, bank or branch: whose current flows in it
    double length_m = 0.0;          //!< one way [m]
    std::string wire{};             //!< id, or `choose`
    std::string connector{};        //!< id of the joints at its ends, if known
    std::optional<double> joint_ohm{};  //!< of all its joints together [ohm]
    Surroundings surroundings{};

    friend bool operator==(const WireRun&, const WireRun&) = default;
    [[nodiscard]] bool chooses() const { return wire == "choose"; }
};
[[nodiscard]] std::span<const Field> wire_run_fields();

}  // namespace heatmatch
