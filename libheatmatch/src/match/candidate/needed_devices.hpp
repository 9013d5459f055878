#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// Devices of one kind that a circuit needs.
struct NeededDevice {
    std::optional<Control> control{};  //!< empty: no control of the catalog can do it
    int count = 1;
    int owned = 0;
    Sentence why{};
    bool of_store = false;  //!< serves every circuit of the store
};

struct NeededDevices {
    std::vector<NeededDevice> devices{};
    Sentences remarks{};  //!< listed devices that can do nothing here
};

/// Listed devices that can do something in their place, and what is missing for the duties that the
/// margins require: a disconnect, an overtemperature limit with what it opens, a thermostat if one
/// is listed, and string fuses where the reverse current exceeds the panel's fuse rating, or may.
/// For each missing one the cheapest control of the catalog that can do it at the voltage and
/// current of this circuit. A part counts as able if some wiring of its control side and a set
/// point within its range (the stated one, if stated) let it act: those cost nothing, and the
/// margins judge them. @cite nec-690-13 @cite nec-690-9
[[nodiscard]] NeededDevices needed_devices(const Circuit& circuit, const Site& site,
                                           const Parts& catalog, std::string_view currency);

}  // namespace heatmatch
