#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/parts/store_material.hpp"

namespace heatmatch {

/// Shape of a store.
enum class StoreShape { cylinder, box };
inline constexpr auto store_shape_words = std::to_array<std::string_view>({"cylinder", "box"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(StoreShape) {
    return store_shape_words;
}

/// Whether a store is in the heated space.
enum class StorePlace { in_space, outside };
inline constexpr auto store_place_words = std::to_array<std::string_view>({"in space", "outside"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(StorePlace) {
    return store_place_words;
}

/// Position of the elements' terminals.
enum class StoreTerminals { buried, box_outside, through_wall };
inline constexpr auto store_terminals_words =
    std::to_array<std::string_view>({"buried", "box outside", "through wall"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(StoreTerminals) {
    return store_terminals_words;
}

/// Base under a store.
enum class StandsOn { wood, concrete, soil, metal_legs };
inline constexpr auto stands_on_words =
    std::to_array<std::string_view>({"wood", "concrete", "soil", "metal legs"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(StandsOn) {
    return stands_on_words;
}

/// The heat store.
struct Store {
    std::string medium{};
    std::optional<StoreShape> shape{};
    std::optional<double> diameter_m{};  //!< of a cylinder [m]
    std::optional<double> width_m{};     //!< of a box [m]
    std::optional<double> depth_m{};     //!< of a box [m]
    std::optional<double> height_m{};    //!< of the fill [m]
    std::optional<double> wall_emissivity{};
    std::optional<double> top_u_w_m2k{};           //!< heat transfer from lid to air [W/m2K]
    std::optional<double> side_u_w_m2k{};          //!< of the insulation around the wall [W/m2K]
    std::optional<double> bottom_u_w_m2k{};        //!< of the floor [W/m2K]
    std::optional<double> element_spacing_mm{};    //!< between neighbouring elements [mm]
    std::optional<double> spreader_diameter_mm{};  //!< of a pipe over each leg [mm]
    std::optional<double> element_height_mm{};     //!< lower ends of the legs above the floor [mm]
    std::optional<double> from_axis_mm{};          //!< distance of the middle of the legs from the
                                                   //!< axis [mm]
    std::optional<bool> element_lies{};            //!< legs are horizontal, otherwise upright
    std::optional<StorePlace> stands{};
    std::optional<StandsOn> stands_on{};
    std::optional<double> charge_hours{};  //!< hours of full sun per day [h]
    std::optional<double> air_c{};         //!< air around it on the warmest day of use [°C]
    std::optional<StoreTerminals> terminals{};
    std::optional<bool> moist{};                      //!< the fill was damp when filled, or gets
                                                      //!< wet
    std::optional<bool> rods_packed{};                //!< rods are packed into the grooves or bores
                                                      //!< of a solid
    std::optional<bool> vented{};                     //!< steam and pressure can escape
    std::optional<double> combustible_distance_mm{};  //!< to the nearest wood or plastic [mm]
    std::optional<StoreMaterial> vessel{};            //!< material of wall, floor and lid around
                                                      //!< the fill
    std::optional<double> vessel_mm{};                //!< thickness of a metal vessel [mm]
    std::optional<StoreMaterial> liner{};             //!< between fill and vessel
    std::optional<StoreMaterial> lagging{};           //!< around the vessel, also under a jacket
    std::optional<double> lagging_mm{};               //!< thickness of the lagging [mm]
    std::optional<bool> element_covered{};            //!< always covered by the liquid
    std::optional<bool> vessel_bonded{};              //!< a metal vessel is bonded to earth
    std::optional<bool> sheath_bonded{};              //!< sheaths of the elements are bonded to
                                                      //!< earth
    std::optional<double>
        loss_factor{};  //!< measured heat loss over the computed one; 1 if unknown
    std::string notes{};

    friend bool operator==(const Store&, const Store&) = default;
};
[[nodiscard]] std::span<const Field> store_fields();

}  // namespace heatmatch
