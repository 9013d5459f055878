#pragma once

#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// An existing circuit, as described by its owner.
struct ExistingCircuit {
    std::string name{};               //!< needed where there are several
    std::string group{};              //!< of owned panels
    std::string panels{};             //!< hook-up, `2S1P`
    std::string array{};              //!< of several groups instead, in the notation of Layout
    std::string element{};            //!< id
    std::string bank{};               //!< hook-up of equal elements, `1S2P`
    std::vector<std::string> runs{};  //!< names of runs that belong to it and to those naming them
    std::vector<std::string> devices{};  //!< ids of controls that belong to it, in the same way

    friend bool operator==(const ExistingCircuit&, const ExistingCircuit&) = default;
};
[[nodiscard]] std::span<const Field> existing_circuit_fields();

}  // namespace heatmatch
