#pragma once

#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/element.hpp"
#include "heatmatch/parts/medium.hpp"
#include "heatmatch/setting/store.hpp"

namespace heatmatch {

/// Air between a rod and its fill, as a uniform gap of equal thermal resistance.
struct RodContact {
    double gap_m = 0.0;
    std::vector<Assumption> assumed{};
};

/// A rod in the bore or groove of a solid: 0.2 mm, or 0.05 mm where it is packed (both from
/// memory). Grains over a quarter of its diameter touch it at points only. A plane wall transfers
/// `0.8 (4 k/d) [(1 + 2s/d) ln(1 + d/2s) - 1]` W/m2K to spheres of d through air of k, s = 10 um of
/// roughness for crushed stones; the gap is k over that. Finer grains: none, less than 15 K at 1
/// W/cm. Grain not stated: large stones. Not valid for stones much thicker than the rod, where the
/// rod faces the voids. @cite schlunder-1984
[[nodiscard]] RodContact rod_contact(const Medium& medium, const Store& store,
                                     const Element& element, double rod_radius_m);

}  // namespace heatmatch
