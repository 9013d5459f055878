#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/device.hpp"
#include "heatmatch/setting/existing_circuit.hpp"
#include "heatmatch/setting/goals.hpp"
#include "heatmatch/setting/owned.hpp"
#include "heatmatch/setting/site.hpp"
#include "heatmatch/setting/space.hpp"
#include "heatmatch/setting/store.hpp"
#include "heatmatch/setting/wire_run.hpp"

namespace heatmatch {

/// The user's situation: owned parts, parts that may be bought, and where they are.
struct Installation {
    std::string name{};
    std::string notes{};  //!< why its values are what they are, in the user's words
    Site site{};
    std::optional<MonthlyNormals> weather{};
    std::vector<OwnedPanels> panels{};
    std::vector<AllowedElements> elements{};
    std::optional<Store> store{};
    std::vector<WireRun> runs{};
    std::vector<Device> devices{};
    std::optional<Space> space{};
    Goals goals{};
    std::optional<ExistingCircuit> circuit{};  //!< short form of one circuit
    std::vector<ExistingCircuit> circuits{};   //!< all circuits that heat the store
    Parts parts{};  //!< given inline; they replace catalog parts of the same id
};

/// The catalog's parts, with the inline parts of the installation added or replacing them.
[[nodiscard]] Parts merged_parts(Parts catalog, const Installation& installation);

/// Checks that every name in the installation exists in `parts` or in the installation: panels,
/// elements, wires, controls, runs, groups. Throws InvalidInput or NotFound naming the nearest
/// known name.
void check_references(const Installation& installation, const Parts& parts);

/// Checks an installation made by a program in the same way as a file: every field of every record,
/// the checks across fields, the inline parts, all references, and the parts of `parts` that it
/// names or may choose. Throws InvalidInput or NotFound.
void check_installation(const Installation& installation, const Parts& parts);

/// The owned panels of that group. Throws NotFound.
[[nodiscard]] const OwnedPanels& find_group(const Installation& installation,
                                            std::string_view group);

/// The existing circuits: those of `circuits`, or the one of `circuit`. Those without a name are
/// called `circuit 1` and so on.
[[nodiscard]] std::vector<ExistingCircuit> existing_circuits(const Installation& installation);
/// The group of every panel of a circuit with an array of several groups; else its group, once.
[[nodiscard]] std::vector<std::string> groups_of(const ExistingCircuit& circuit);

/// The installation of one of its circuits: with that circuit alone, and the runs and
/// devices that belong to it. A run or device that some circuit names belongs to those that name
/// it; any other is the pattern of one in each circuit. Throws InvalidInput without that circuit.
[[nodiscard]] Installation installation_of(const Installation& installation, std::size_t circuit);

/// Checks the circuits against each other and against the runs and devices: one of `circuit` and
/// `circuits`, each name given once, runs and devices that are listed. Throws InvalidInput.
void check_circuits(const Installation& installation);

}  // namespace heatmatch
