#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "heatmatch/base/choice.hpp"

namespace heatmatch {

/// Material of the vessel of a store, its liner or its lagging. Foams have the name of their
/// plastic; `none` where there is no such layer.
enum class StoreMaterial {
    none,
    steel,
    galvanised_steel,
    stainless_steel,
    aluminium,
    copper,
    concrete,
    masonry,
    ceramic,
    glass,
    ceramic_fibre,
    calcium_silicate,
    vermiculite,
    perlite,
    cellular_glass,
    mineral_wool,
    stone_wool,
    glass_wool,
    wood,
    cardboard,
    textile,
    straw,
    polyethylene,
    cross_linked_polyethylene,
    polypropylene,
    pvc,
    cpvc,
    glass_reinforced_plastic,
    polystyrene,
    polyurethane,
    polyisocyanurate,
    phenolic_foam,
    elastomeric_foam,
    epdm,
    butyl,
    natural_rubber,
    neoprene,
    nitrile,
    silicone,
    ptfe
};
inline constexpr auto store_material_words =
    std::to_array<std::string_view>({"none",
                                     "steel",
                                     "galvanised steel",
                                     "stainless steel",
                                     "aluminium",
                                     "copper",
                                     "concrete",
                                     "masonry",
                                     "ceramic",
                                     "glass",
                                     "ceramic fibre",
                                     "calcium silicate",
                                     "vermiculite",
                                     "perlite",
                                     "cellular glass",
                                     "mineral wool",
                                     "stone wool",
                                     "glass wool",
                                     "wood",
                                     "cardboard",
                                     "textile",
                                     "straw",
                                     "polyethylene",
                                     "cross-linked polyethylene",
                                     "polypropylene",
                                     "PVC",
                                     "CPVC",
                                     "glass-reinforced plastic",
                                     "polystyrene",
                                     "polyurethane",
                                     "polyisocyanurate",
                                     "phenolic foam",
                                     "elastomeric foam",
                                     "EPDM",
                                     "butyl",
                                     "natural rubber",
                                     "neoprene",
                                     "nitrile",
                                     "silicone",
                                     "PTFE"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(StoreMaterial) {
    return store_material_words;
}

/// Temperature limits of a material, with their source.
struct MaterialLimit {
    StoreMaterial material = StoreMaterial::none;
    double years_c = 0.0;             //!< for years of service [°C]
    std::optional<double> fails_c{};  //!< it softens, melts, chars or scales soon above it
    std::string_view source{};        //!< cite key
};

/// All materials except `none`, in their order. Where sources differ, the lowest limit for years; a
/// plastic under load has a lower limit than one without. @cite insulation-limits-table @cite
/// nia-insulation-guide @cite ppfa-pipe-limits @cite plastics-long-term @cite elastomer-limits
/// @cite galvanising-heat @cite ul-1030 @cite stainless-oxidation @cite babrauskas-2007 @cite
/// from-memory
[[nodiscard]] std::span<const MaterialLimit> material_limits();

/// The lowest limit for years of all materials [°C], for a material that is not stated.
[[nodiscard]] double least_years_c();

/// The row of a material; null for `none`.
[[nodiscard]] const MaterialLimit* find_material_limit(StoreMaterial material);

}  // namespace heatmatch
