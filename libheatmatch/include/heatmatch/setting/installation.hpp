#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/device.hpp"
#include "heatmatch/setting/goals.hpp"
#include "heatmatch/setting/owned.hpp"
#include "heatmatch/setting/site.hpp"
#include "heatmatch/setting/space.hpp"
#include "heatmatch/setting/store.hpp"
#include "heatmatch/setting/wire_run.hpp"

namespace heatmatch {

/// The circuit that already stands, as its owner describes it.
struct ExistingCircuit {
    std::string group{};    //!< of owned panels
    std::string panels{};   //!< hook-up, `2S1P`
    std::string element{};  //!< id
    std::string bank{};     //!< hook-up of equal elements, `1S2P`

    friend bool operator==(const ExistingCircuit&, const ExistingCircuit&) = default;
};
[[nodiscard]] std::span<const Field> standing_circuit_fields();

/// The user's situation: what is owned, what may be bought, and where it all stands.
struct Installation {
    std::string name{};
    Site site{};
    std::optional<MonthlyNormals> weather{};
    std::vector<OwnedPanels> panels{};
    std::vector<AllowedElements> elements{};
    std::optional<Store> store{};
    std::vector<WireRun> runs{};
    std::vector<Device> devices{};
    std::optional<Space> space{};
    Goals goals{};
    std::optional<ExistingCircuit> circuit{};
    Parts parts{};  //!< given inline; they stand before parts of the catalog of the same id
};

/// The catalog's parts with the inline parts of the installation put over them.
[[nodiscard]] Parts merged_parts(Parts catalog, const Installation& installation);

/// Checks that everything the installation names is in `parts` or in itself: panels, elements,
/// wires, controls, runs, groups. Throws InvalidInput or NotFound naming the nearest known name.
void check_references(const Installation& installation, const Parts& parts);

/// Checks an installation made by a program as a file of it would be: every field of every record,
/// what no single field can, the inline parts, all references, and the parts of `parts` that it
/// names or chooses among. Throws InvalidInput or NotFound.
void check_installation(const Installation& installation, const Parts& parts);

/// The owned panels of that group. Throws NotFound.
[[nodiscard]] const OwnedPanels& find_group(const Installation& installation,
                                            std::string_view group);

}  // namespace heatmatch
