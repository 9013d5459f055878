#include "heatmatch/parts/store_material.hpp"

#include <algorithm>

namespace heatmatch {

namespace {

// The source is that of the limit for years; the failure temperature is from memory unless the same
// source has it. Mineral wool of an unknown kind counts as glass wool. Wood and similar materials:
// at 77 °C they char over years, and the source requires a margin below that.
constexpr auto material_rows = [] {
    using enum StoreMaterial;
    return std::to_array<MaterialLimit>({
        {steel, 370.0, 540.0, "ul-1030"},
        {galvanised_steel, 200.0, 419.0, "galvanising-heat"},
        {stainless_steel, 538.0, 870.0, "stainless-oxidation"},
        {aluminium, 150.0, 580.0, "from-memory"},
        {copper, 150.0, 183.0, "from-memory"},
        {concrete, 300.0, 573.0, "from-memory"},
        {masonry, 300.0, 573.0, "from-memory"},
        {ceramic, 300.0, 573.0, "from-memory"},
        {glass, 100.0, 510.0, "from-memory"},
        {ceramic_fibre, 1000.0, 1200.0, "insulation-limits-table"},
        {calcium_silicate, 649.0, std::nullopt, "nia-insulation-guide"},
        {vermiculite, 760.0, std::nullopt, "insulation-limits-table"},
        {perlite, 649.0, std::nullopt, "nia-insulation-guide"},
        {cellular_glass, 426.0, 480.0, "nia-insulation-guide"},
        {mineral_wool, 232.0, 250.0, "nia-insulation-guide"},
        {stone_wool, 454.0, 760.0, "nia-insulation-guide"},
        {glass_wool, 232.0, 250.0, "nia-insulation-guide"},
        {wood, 70.0, 77.0, "babrauskas-2007"},
        {cardboard, 70.0, 77.0, "babrauskas-2007"},
        {textile, 70.0, 77.0, "babrauskas-2007"},
        {straw, 70.0, 77.0, "babrauskas-2007"},
        {polyethylene, 60.0, 79.0, "ppfa-pipe-limits"},
        {cross_linked_polyethylene, 82.0, 99.0, "ppfa-pipe-limits"},
        {polypropylene, 80.0, 107.0, "from-memory"},
        {pvc, 60.0, 75.0, "plastics-long-term"},
        {cpvc, 82.0, 99.0, "ppfa-pipe-limits"},
        {glass_reinforced_plastic, 60.0, 80.0, "from-memory"},
        {polystyrene, 73.0, 80.0, "nia-insulation-guide"},
        {polyurethane, 90.0, 120.0, "from-memory"},
        {polyisocyanurate, 120.0, 149.0, "insulation-limits-table"},
        {phenolic_foam, 120.0, 150.0, "from-memory"},
        {elastomeric_foam, 104.0, 120.0, "nia-insulation-guide"},
        {epdm, 120.0, 150.0, "from-memory"},
        {butyl, 80.0, 149.0, "from-memory"},
        {natural_rubber, 70.0, 100.0, "from-memory"},
        {neoprene, 82.0, 125.0, "elastomer-limits"},
        {nitrile, 100.0, 120.0, "from-memory"},
        {silicone, 200.0, 232.0, "from-memory"},
        {ptfe, 260.0, 316.0, "from-memory"},
    });
}();

}  // namespace

std::span<const MaterialLimit> material_limits() {
    return material_rows;
}

double least_years_c() {
    static const double least_c =
        std::min_element(
            material_rows.begin(), material_rows.end(),
            [](const MaterialLimit& a, const MaterialLimit& b) { return a.years_c < b.years_c; })
            ->years_c;
    return least_c;
}

const MaterialLimit* find_material_limit(StoreMaterial material) {
    const auto* const found =
        std::find_if(material_rows.begin(), material_rows.end(),
                     [&](const MaterialLimit& limit) { return limit.material == material; });
    return found == material_rows.end() ? nullptr : &*found;
}

}  // namespace heatmatch
