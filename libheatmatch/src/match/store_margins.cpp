#include "heatmatch/match/store_margins.hpp"

#include <array>

namespace heatmatch {

namespace {

constexpr double end_seal_limit_c = 200.0;  // from memory: silicone and epoxy seals

struct Pending {
    const char* name;
    const char* subject;
    const char* why;
};

constexpr auto pending = std::to_array<Pending>({
    {"sheath temperature", "element",
     "How hot the sheath gets in the bed is not part of this version. In dry sand watts per "
     "centimetre of heated length decide, not rated watts: at its rating most elements burn out."},
    {"coil temperature", "element",
     "The coil is hotter than the sheath; not part of this version."},
    {"end seal", "element", "Seals stand {limit} or less; their heat is not part of this version."},
    {"wall and lid", "store", "Heat at combustibles near the store is not part of this version."},
    {"touch temperature", "store", "Burns by touching the store are not part of this version."},
    {"store ceiling", "store", "The ceiling of the fill is not part of this version."},
    {"stagnation", "store",
     "What everything reaches with no heat taken and a welded thermostat is not part of this "
     "version."},
    {"dry-out", "store", "Moisture and steam are not part of this version."},
});

}  // namespace

std::vector<Margin> store_margins(const Circuit& circuit, const Installation& installation) {
    std::vector<Margin> margins;
    for (const Pending& entry : pending) {
        const bool of_element = std::string_view(entry.subject) == "element";
        const std::string subject = of_element ? "element \"" + circuit.bank.element.id + '"'
                                    : installation.store ? "store of " + installation.store->medium
                                                         : std::string("store");
        margins.push_back(not_assessed(entry.name, subject, entry.why, {"model of the store"}));
        if (margins.back().name == "end seal") {
            margins.back().limit = end_seal_limit_c;
            margins.back().unit = unit::celsius;
        }
    }
    return margins;
}

}  // namespace heatmatch
