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
    std::string element{};            //!< id, of equal elements
    std::string bank{};               //!< hook-up of equal elements, `1S2P`
    std::string elements{};           //!< Layout of ids, in place of `element` and `bank`
    std::vector<std::string> runs{};  //!< names of runs that belong to it and to those naming them
    std::vector<std::string> devices{};  //!< ids of controls that belong to it, in the same way

    friend bool operator==(const ExistingCircuit&, const ExistingCircuit&) = default;
};
[[nodiscard]] std::span<const Field> existing_circuit_fields();

/// Checks all fields and across fields: an element and its bank, or a layout of elements instead.
/// Throws InvalidInput.
void check_existing_circuit(const ExistingCircuit& circuit, const std::string& part);

/// Ids of its elements, each once.
[[nodiscard]] std::vector<std::string> element_ids(const ExistingCircuit& circuit);

}  // namespace heatmatch
