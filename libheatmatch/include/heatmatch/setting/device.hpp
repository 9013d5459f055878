#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// A control in its place, with what it has to do there.
struct Device {
    std::string part{};  //!< id of a control
    std::string run{};   //!< name of the run it sits in; empty for one outside the circuit
    std::string duty{};  //!< breaks dc, carries dc, protects a string, senses only
    int poles_used = 1;  //!< poles of it that are wired in series
    std::optional<double> set_c{};  //!< what it is set to, of one that senses [°C]
    std::string senses{};           //!< where: wall, lid, bed or space; empty: wall

    friend bool operator==(const Device&, const Device&) = default;
};
[[nodiscard]] std::span<const Field> device_fields();

}  // namespace heatmatch
