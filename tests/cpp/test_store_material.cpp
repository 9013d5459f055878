#include <set>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/parts/store_material.hpp"
#include "heatmatch/text/starter.hpp"

using heatmatch::find_material_limit;
using heatmatch::MaterialLimit;
using heatmatch::StoreMaterial;

TEST_CASE("every material but none has one row, in the order of the words") {
    std::size_t place = 1;
    REQUIRE(heatmatch::material_limits().size() + 1 == heatmatch::store_material_words.size());
    for (const MaterialLimit& row : heatmatch::material_limits()) {
        CAPTURE(std::string(heatmatch::word_of(row.material)));
        CHECK(static_cast<std::size_t>(row.material) == place++);
        CHECK(row.years_c >= 40.0);
        CHECK(row.fails_c.value_or(1e4) > row.years_c);
        CHECK(find_material_limit(row.material) == &row);
    }
    CHECK(find_material_limit(StoreMaterial::none) == nullptr);
}

// Source: the tables of operating temperatures that each row names, as excerpts; where two differ
// the row may not stand more than the lower one.
TEST_CASE("no material has a limit above the lowest published one") {
    struct Published {
        StoreMaterial material;
        double most_c;
    };
    for (const Published& each : std::initializer_list<Published>{
             {StoreMaterial::polystyrene, 165.0 / 1.8 - 32.0 / 1.8},    // nia-insulation-guide
             {StoreMaterial::polyurethane, 120.0},                      // insulation-limits-table
             {StoreMaterial::polyisocyanurate, 120.0},                  // the same
             {StoreMaterial::phenolic_foam, 257.0 / 1.8 - 32.0 / 1.8},  // nia-insulation-guide
             {StoreMaterial::elastomeric_foam, 220.0 / 1.8 - 32.0 / 1.8},  // the same
             {StoreMaterial::glass_wool, 250.0},                         // insulation-limits-table
             {StoreMaterial::stone_wool, 760.0},                         // the same
             {StoreMaterial::cellular_glass, 800.0 / 1.8 - 32.0 / 1.8},  // nia-insulation-guide
             {StoreMaterial::calcium_silicate, 650.0},                   // insulation-limits-table
             {StoreMaterial::polyethylene, 60.0},                        // ppfa-pipe-limits
             {StoreMaterial::pvc, 60.0},                                 // plastics-long-term
             {StoreMaterial::polypropylene, 100.0},                      // the same
             {StoreMaterial::cpvc, 180.0 / 1.8 - 32.0 / 1.8},            // ppfa-pipe-limits
             {StoreMaterial::neoprene, 82.0},                            // elastomer-limits
             {StoreMaterial::nitrile, 120.0},                            // the same
             {StoreMaterial::natural_rubber, 80.0},                      // the same
             {StoreMaterial::epdm, 140.0},                               // the same
             {StoreMaterial::silicone, 232.0},                           // the same
             {StoreMaterial::galvanised_steel, 200.0},                   // galvanising-heat
             {StoreMaterial::steel, 399.0},                              // ul-1030
             {StoreMaterial::wood, 77.0}}) {                             // babrauskas-2007
        CAPTURE(std::string(heatmatch::word_of(each.material)));
        CHECK(find_material_limit(each.material)->years_c <= each.most_c + 0.1);
    }
    // Wool of an unstated kind counts as the weaker kind.
    CHECK(find_material_limit(StoreMaterial::mineral_wool)->years_c ==
          find_material_limit(StoreMaterial::glass_wool)->years_c);
}
