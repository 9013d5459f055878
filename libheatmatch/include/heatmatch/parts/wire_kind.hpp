#pragma once

#include <array>
#include <span>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/parts/ampacity_table.hpp"
#include "heatmatch/parts/insulation.hpp"
#include "heatmatch/parts/wire.hpp"

namespace heatmatch {

/// Kind of a wire, by the type letters on its jacket.
enum class WireKind {
    building,
    dry_building,  //!< building wire without a rating for wet places
    pv_wire,
    pv_cable,
    service,
    indoor_cable,
    feeder_cable,
    cord,
    welding,
    vehicle,
    appliance,
    hot_lead,
    mineral,
    metal_clad,
    unknown
};
inline constexpr auto wire_kind_words = std::to_array<std::string_view>(
    {"building wire", "building wire for dry places", "PV wire", "PV cable",
     "underground service wire", "sheathed indoor cable", "underground feeder cable",
     "flexible cord", "welding cable", "vehicle wire", "appliance wire", "lead for hot places",
     "mineral-insulated cable", "metal-clad cable", "wire of unknown type"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(WireKind) {
    return wire_kind_words;
}

/// By its type letters. If they are not known and the insulation withstands 150 °C, a lead for hot
/// places. A wire marked as several kinds has the widest use.
[[nodiscard]] WireKind wire_kind(const Wire& wire, const Insulation* insulation);

/// Permitted places of a kind of wire. In direct sun and in the ground its marking also decides.
struct WirePlaces {
    WireKind kind = WireKind::unknown;
    bool raceway = false;
    bool cavity = false;   //!< of a building, without a raceway
    bool open = false;     //!< fastened to a surface, without a raceway
    bool element = false;  //!< between an element and its box, or in the bed: part of the heater
    std::string_view source{};
};
/// @cite nec-300-3 @cite nec-310-10 @cite nec-690-31 @cite nec-338-12 @cite nec-334 @cite nec-340
/// @cite nec-400-12 @cite welding-cable-use @cite ul-758 @cite nec-332
[[nodiscard]] const WirePlaces& places_of(WireKind kind);

/// Tables of current for that kind.
[[nodiscard]] AmpacityGroup ampacity_group(WireKind kind);

}  // namespace heatmatch
