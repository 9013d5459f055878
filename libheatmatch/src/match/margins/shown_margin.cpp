#include "heatmatch/match/margins/shown_margin.hpp"

#include <algorithm>
#include <array>

namespace heatmatch {

namespace {

constexpr auto shown_names = std::to_array<ShownMargin>({
    // array
    {"cold voltage", "voltage at record low"},
    {"touch voltage", "touch voltage"},
    {"series arc", "series arc"},
    {"reverse current", "reverse current"},
    {"string mismatch", "string mismatch"},
    {"unequal strings", "unequal strings"},
    {"unequal panels", "unequal panels in series"},
    {"bypass diodes", "bypass diodes"},
    {"reversed panel", "panel reversed by others"},
    {"string fuse", "string fuse"},
    {"string fuse wire", "fuse size for the wire"},
    {"shade stress", "stress in partial shade"},
    {"bonding", "bonding"},
    // element and bank
    {"element power", "element power"},
    {"element voltage", "element voltage"},
    {"sheath voltage", "coil-to-sheath voltage"},
    {"survivor power", "power, one element open"},
    {"earth fault", "ground fault (earth fault)"},
    {"built-in control", "built-in control"},
    {"voltage drop", "voltage drop"},
    // run of wire
    {"wire", "wire present"},
    {"run current", "ampacity of the wire"},
    {"insulation", "wire insulation"},
    {"plating", "conductor plating"},
    {"joint", "joint temperature"},
    {"joint voltage", "joint voltage"},
    {"joint current", "joint current"},
    {"sunlight", "sunlight resistance"},
    {"wet place", "wet location"},
    {"placing", "wiring method"},
    // device
    {"dc breaking", "DC breaking capacity"},
    {"dc carrying", "DC current rating"},
    {"polarity", "polarity"},
    {"shared poles", "poles for all circuits"},
    {"device temperature", "device temperature"},
    {"disconnect", "disconnect"},
    {"independent limit", "overtemperature limit"},
    {"limit acts in time", "limit trips in time"},
    {"limit supply", "limit on loss of supply"},
    // heat at the element and its lead
    {"fit in store", "element size for the store"},
    {"sheath temperature", "sheath temperature"},
    {"coil temperature", "coil temperature"},
    {"settled sand", "sheath in settled sand"},
    {"stagnation", "sheath in stagnation"},
    {"survivor sheath", "sheath, one element open"},
    {"terminal temperature", "terminal temperature"},
    {"end seal", "end seal"},
    {"hot tail insulation", "element lead insulation"},
    {"hot tail plating", "element lead plating"},
    {"hot tail joint", "element lead joint"},
    // store
    {"store ceiling", "fill temperature"},
    {"wall and lid", "wood near wall and lid"},
    {"touch temperature", "touch temperature"},
    {"dry-out", "drying of the fill"},
    {"pressure", "pressure in the vessel"},
    {"floor", "floor under the store"},
    {"vessel material", "vessel material"},
    {"liner material", "liner material"},
    {"lagging material", "insulation jacket material"},
    {"element covered", "liquid over the element"},
    // reasons of a ranking
    {"budget", "above the budget"},
});

}  // namespace

std::span<const ShownMargin> shown_margins() {
    return shown_names;
}

std::string shown_margin_name(std::string_view name) {
    const auto* const found =
        std::find_if(shown_names.begin(), shown_names.end(),
                     [name](const ShownMargin& known) { return known.name == name; });
    return std::string(found == shown_names.end() ? name : found->shown);
}

}  // namespace heatmatch
