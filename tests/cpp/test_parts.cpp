#include "own_parts.hpp"
#include "refusal.hpp"

#include <set>
#include <string>
#include <tuple>
#include <variant>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/parts.hpp"

using heatmatch::check_part;
using heatmatch::InvalidInput;
using heatmatch::NotFound;
using heatmatch::Panel;
using heatmatch::Part;
using heatmatch::part_kind;
using heatmatch::part_kinds;
using heatmatch::PartKind;
using heatmatch::Parts;

TEST_CASE("the kinds are in the order of the alternatives of a part") {
    CHECK(part_kinds().size() == std::variant_size_v<Part>);
    std::set<std::string_view> names;
    for (std::size_t k = 0; k < part_kinds().size(); ++k) {
        const heatmatch::PartKindInfo& info = part_kinds()[k];
        CAPTURE(std::string(info.name));
        CHECK(static_cast<std::size_t>(info.kind) == k);
        const Part part = heatmatch::make_part(info.kind);
        CHECK(part.index() == k);
        CHECK(part_kind(part).kind == info.kind);
        CHECK(part_kind(info.kind).name == info.name);
        CHECK(part_kind(info.name).kind == info.kind);
        CHECK(part_kind(info.plural).kind == info.kind);
        CHECK(names.insert(info.name).second);
        CHECK(names.insert(info.plural).second);
        CHECK(heatmatch::part_id(part).empty());
        // An empty part is never usable: it has neither id nor source.
        CHECK(holds(part_refusal(part), "id = (missing)"));
    }
}

TEST_CASE("an unknown kind is refused with the nearest one") {
    CHECK_THROWS_WITH_AS(std::ignore = part_kind("pannel"),
                         "kind = \"pannel\" must be a kind of part; did you mean \"panel\"?",
                         InvalidInput);
    CHECK_THROWS_AS(std::ignore = part_kind(""), InvalidInput);
    CHECK_THROWS_AS(std::ignore = part_kind(std::string(100000, 'x')), InvalidInput);
}

TEST_CASE("every kind starts with id and label and ends with source, price and notes") {
    for (const heatmatch::PartKindInfo& info : part_kinds()) {
        CAPTURE(std::string(info.name));
        CHECK(info.fields[0].name == "id");
        CHECK(info.fields[1].name == "label");
        for (const char* common : {"source", "source_kind", "source_of", "price_low", "price_high",
                                   "price_currency", "notes"}) {
            CHECK(heatmatch::find_field(info.fields, common) != nullptr);
        }
        CHECK(info.fields.back().name == "notes");
    }
}

TEST_CASE("putting a part adds it, or replaces the one of its id") {
    Parts parts;
    parts.put(Panel{.id = "a", .v_oc = 1.0});
    parts.put(Panel{.id = "b", .v_oc = 2.0});
    parts.put(Panel{.id = "a", .v_oc = 3.0});
    parts.put(heatmatch::Alloy{.id = "a"});
    REQUIRE(parts.panels.size() == 2);
    CHECK(parts.panels[0].v_oc == 3.0);
    CHECK(parts.alloys.size() == 1);
    CHECK(heatmatch::list_parts(parts).size() == 3);
    const auto found = parts.find(PartKind::panel, "b");
    REQUIRE(found.has_value());
    CHECK(std::get<Panel>(*found).v_oc == 2.0);
    CHECK_FALSE(parts.find(PartKind::panel, "c").has_value());
    CHECK_FALSE(parts.find(PartKind::wire, "a").has_value());
}

TEST_CASE("a part that is not there is named with its nearest neighbour") {
    Parts parts;
    CHECK_THROWS_WITH_AS(std::ignore = heatmatch::find_panel(parts, "barn"),
                         "no panel \"barn\" in the catalog: it holds none", NotFound);
    parts.put(Panel{.id = "silicon-60-cell-245"});
    parts.put(Panel{.id = "cdte-100"});
    CHECK(heatmatch::find_panel(parts, "cdte-100").id == "cdte-100");
    CHECK_THROWS_WITH_AS(
        std::ignore = heatmatch::find_panel(parts, "silicon-60-cell-240"),
        "no panel \"silicon-60-cell-240\" in the catalog; did you mean \"silicon-60-cell-245\"?",
        NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_element(parts, "cdte-100"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_wire(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_insulation(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_control(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_connector(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_medium(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_alloy(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_sheath(parts, "x"), NotFound);
    CHECK_THROWS_AS(std::ignore = heatmatch::find_cover(parts, "x"), NotFound);
}

TEST_CASE("low, typical and high are in order") {
    heatmatch::Medium sand{.id = "sand",
                           .label = "Sand",
                           .form = heatmatch::MediumForm::granular,
                           .k20_w_mk = 0.27,
                           .k20_low_w_mk = 0.2,
                           .k20_high_w_mk = 0.35,
                           .density_kg_m3 = 1600.0,
                           .heat_capacity_j_kgk = {{20.0, 737.0}, {100.0, 850.0}},
                           .provenance = by_label};
    CHECK(part_refusal(sand) == "(accepted)");
    sand.k20_low_w_mk = 0.3;
    CHECK(holds(part_refusal(sand), "medium \"sand\": k20_w_mk = 0.27 must be between its low"));
    sand.k20_low_w_mk.reset();
    CHECK(part_refusal(sand) == "(accepted)");
    sand.moist_k_w_mk = 1.6;
    sand.moist_k_high_w_mk = 1.5;
    CHECK(holds(part_refusal(sand), "moist_k_w_mk = 1.6"));
    sand.moist_k_high_w_mk = 2.0;
    sand.heat_capacity_j_kgk = {{100.0, 850.0}, {20.0, 737.0}};
    CHECK(holds(part_refusal(sand), "sort the table by t_c"));
    sand.heat_capacity_j_kgk.clear();
    CHECK(holds(part_refusal(sand), "heat_capacity_j_kgk = (missing)"));

    heatmatch::Cover glass{.id = "glass",
                           .label = "Glass",
                           .u_w_m2k = 5.8,
                           .u_low_w_m2k = 5.0,
                           .u_high_w_m2k = 5.5,
                           .provenance = by_label};
    CHECK(holds(part_refusal(glass), "cover \"glass\": u_w_m2k = 5.8"));
    glass.u_high_w_m2k = 6.5;
    CHECK(part_refusal(glass) == "(accepted)");

    heatmatch::Sheath copper{.id = "copper",
                             .label = "Copper",
                             .verdict_limit_c = 177.0,
                             .hard_limit_c = 150.0,
                             .provenance = by_label};
    CHECK(holds(part_refusal(copper), "sheath \"copper\": verdict_limit_c = 177"));
    copper.verdict_limit_c = 150.0;
    CHECK(part_refusal(copper) == "(accepted)");
}

TEST_CASE("insulations, connectors and alloys name their required fields") {
    heatmatch::Insulation pvc{
        .id = "pvc", .label = "PVC", .family = "PVC", .limit_c = 70.0, .provenance = by_label};
    CHECK(part_refusal(pvc) == "(accepted)");
    pvc.limit_c = 0.0;
    CHECK(holds(part_refusal(pvc), "limit_c = 0 °C must be >= 40 °C and <= 1200 °C"));
    heatmatch::Connector ring{.id = "ring",
                              .label = "Ring",
                              .family = "ring terminal",
                              .limit_c = 105.0,
                              .provenance = by_label};
    CHECK(holds(word_refusal(ring, "place", "cold"), "choices: cold end"));
    ring.place = heatmatch::ConnectorPlace::cold_end;
    CHECK(part_refusal(ring) == "(accepted)");
    heatmatch::Alloy alloy{.id = "nicr", .label = "NiCr", .provenance = by_label};
    CHECK(part_refusal(alloy) == "(accepted)");
    alloy.resistance_factor = {{20.0, 1.0}, {20.0, 1.1}};
    CHECK(holds(part_refusal(alloy), "resistance_factor"));
}

TEST_CASE("a title names the kind and the id, and a long id is cut") {
    CHECK(heatmatch::part_title(Panel{.id = "barn"}) == "panel \"barn\"");
    CHECK(heatmatch::part_title(Panel{.id = std::string(500, 'a')}).size() < 100);
}
