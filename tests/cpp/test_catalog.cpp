#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>
#include <variant>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::Error;
using heatmatch::Field;
using heatmatch::FieldKind;
using heatmatch::InvalidInput;
using heatmatch::NotFound;
using heatmatch::Panel;
using heatmatch::Part;
using heatmatch::PartKind;
using heatmatch::Parts;
using heatmatch::Rows;

namespace {

heatmatch::Insulation own_insulation(const std::string& id) {
    return {.id = id, .label = "Own", .family = "own", .limit_c = 100.0, .provenance = by_label};
}

heatmatch::Wire own_wire(const std::string& id, const std::string& insulation) {
    return {.id = id,
            .label = "Own",
            .conductor = heatmatch::ConductorMetal::copper,
            .plating = heatmatch::Plating::bare,
            .area_mm2 = 2.5,
            .insulation = insulation,
            .provenance = by_label};
}

/// A number inside a range that is no short decimal.
double inside(const heatmatch::Range& range) {
    return range.low + (range.high - range.low) / 3.0;
}

heatmatch::Value sample_value(const Field& field, const Parts& starter) {
    switch (field.kind) {
        case FieldKind::number:
            return inside(field.range);
        case FieldKind::count:
            return std::floor(inside(field.range)) + 1.0;
        case FieldKind::flag:
            return true;
        case FieldKind::choice:
            return std::string(field.words.front());
        case FieldKind::slug:
            return std::string("a-sample");
        case FieldKind::reference: {
            std::string id;
            for (const Part& part : heatmatch::list_parts(starter)) {
                if (part_kind(part).name == field.refers_to) id = part_id(part);
            }
            return id;
        }
        case FieldKind::rows:
        case FieldKind::record: {
            std::vector<double> row;
            for (const heatmatch::Column& column : field.columns) {
                row.push_back(column.unit == heatmatch::unit::count ? 2.0 : inside(column.range));
            }
            return Rows{row};
        }
        case FieldKind::text_map:
            return heatmatch::TextMap{{"label", "x \"y\""}, {"notes", "z"}};
        default:
            return "Süd \"" + std::string(field.name) + "\", 'x'\n\t%";
    }
}

/// A part of that kind in which no field is empty.
Part full_part(const heatmatch::PartKindInfo& info, const Parts& starter) {
    Part part = heatmatch::make_part(info.kind);
    for (const Field& field : info.fields)
        field.set(part_record(part), sample_value(field, starter));
    if (auto* panel = std::get_if<Panel>(&part)) {
        panel->v_mp = 0.8 * panel->v_oc;
        panel->i_mp = 0.9 * panel->i_sc;
    } else if (auto* control = std::get_if<heatmatch::Control>(&part)) {
        control->ac_only = false;
    } else if (auto* medium = std::get_if<heatmatch::Medium>(&part)) {
        medium->k20_low_w_mk = 0.1;
        medium->moist_k_low_w_mk = 0.1;
    } else if (auto* wire = std::get_if<heatmatch::Wire>(&part)) {
        wire->ampacity_conductor_c = 90.0;
    }
    return part;
}

}  // namespace

TEST_CASE("every field of every kind survives the file") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    const Parts starter = Catalog::starter().parts();
    std::vector<Part> full;
    {
        Catalog catalog = Catalog::open(path);
        for (const heatmatch::PartKindInfo& info : heatmatch::part_kinds()) {
            CAPTURE(std::string(info.name));
            full.push_back(full_part(info, starter));
            for (const Field& field : info.fields) {
                const bool empty = std::holds_alternative<std::monostate>(
                    field.get(heatmatch::part_record(full.back())));
                CHECK_FALSE(empty);
            }
            REQUIRE(refusal_of([&] { catalog.add(full.back()); }) == "(accepted)");
        }
    }
    const Parts parts = Catalog::open(path).parts();
    for (const Part& part : full) {
        CAPTURE(heatmatch::part_title(part));
        const auto found = parts.find(part_kind(part).kind, part_id(part));
        REQUIRE(found.has_value());
        CHECK((*found == part));
    }
}

TEST_CASE("the starter is read-only") {
    Catalog starter = Catalog::starter();
    CHECK(starter.path().empty());
    CHECK(starter.history().empty());
    const std::string before = starter.export_all_json_text();
    const std::string id = starter.parts().panels.front().id;
    for (const std::string& message :
         {refusal_of([&] { starter.add(own_panel("own")); }),
          refusal_of([&] { starter.replace(own_panel(id)); }),
          refusal_of([&] { starter.remove(PartKind::cover, starter.parts().covers.front().id); }),
          refusal_of([&] { starter.undo(); }),
          refusal_of([&] { starter.import_json_text("{\"heatmatch_catalog\": 1}", "x"); })}) {
        CHECK(holds(message, "the starter catalog is read-only; open a file of your own"));
    }
    CHECK((starter.export_all_json_text() == before));
    CHECK_FALSE(starter.is_own(PartKind::panel, id));
    const TempFolder folder;
    CHECK(holds(refusal_of([&] { starter.save_copy(folder.file("copy")); }), "no file"));
}

TEST_CASE("the user's row replaces the starter's of the same id") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const Parts starter = Catalog::starter().parts();
    CHECK(catalog.parts().panels == starter.panels);
    Panel changed = starter.panels.front();
    changed.v_oc += 0.1;
    catalog.replace(changed);
    const Parts parts = catalog.parts();
    CHECK(parts.panels.size() == starter.panels.size());
    CHECK(heatmatch::find_panel(parts, changed.id) == changed);
    CHECK(catalog.is_own(PartKind::panel, changed.id));
    CHECK_FALSE(catalog.is_own(PartKind::panel, starter.panels.back().id));
    CHECK_FALSE(catalog.is_own(PartKind::element, changed.id));
    CHECK(Catalog::starter().parts().panels == starter.panels);
}

TEST_CASE("kinds are listed in order of id, wherever their rows come from") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    for (const char* id : {"zz-last", "00-first", "m.middle", "a_b"}) catalog.add(own_panel(id));
    const Parts parts = catalog.parts();
    CHECK(parts.panels.front().id == "00-first");
    CHECK(parts.panels.back().id == "zz-last");
    CHECK(std::is_sorted(parts.panels.begin(), parts.panels.end(),
                         [](const Panel& a, const Panel& b) { return a.id < b.id; }));
}

TEST_CASE("a removed part of the starter stays away until it is added again") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    const std::string id = Catalog::starter().parts().panels.front().id;
    {
        Catalog catalog = Catalog::open(path);
        catalog.remove(PartKind::panel, id);
        CHECK_FALSE(catalog.parts().find(PartKind::panel, id).has_value());
        CHECK(holds(refusal_of([&] { catalog.remove(PartKind::panel, id); }), "to remove"));
        CHECK(holds(refusal_of([&] { catalog.replace(own_panel(id)); }), "add it instead"));
    }
    Catalog catalog = Catalog::open(path);
    CHECK_FALSE(catalog.parts().find(PartKind::panel, id).has_value());
    catalog.add(own_panel(id));
    CHECK(heatmatch::find_panel(catalog.parts(), id).label == "Own");
    CHECK(catalog.is_own(PartKind::panel, id));
}

TEST_CASE("an id is added once, and only existing parts are replaced or removed") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("own"));
    CHECK_THROWS_AS(catalog.add(own_panel("own")), CatalogError);
    CHECK(holds(refusal_of([&] { catalog.add(own_panel("own")); }),
                "panel \"own\": id = \"own\" is taken; choose another id, or replace the part"));
    CHECK_THROWS_AS(catalog.replace(own_panel("other")), NotFound);
    CHECK_THROWS_AS(catalog.remove(PartKind::panel, "other"), NotFound);
    CHECK_THROWS_AS(catalog.remove(PartKind::wire, "own"), NotFound);
    CHECK_THROWS_AS(catalog.add(own_panel("Not A Slug")), InvalidInput);
    // The same id may name parts of different kinds.
    CHECK_NOTHROW(catalog.add(own_insulation("own")));
    catalog.remove(PartKind::panel, "own");
    CHECK_FALSE(catalog.parts().find(PartKind::panel, "own").has_value());
    CHECK_NOTHROW(catalog.add(own_panel("own")));
}

TEST_CASE("a part that names a missing one is refused") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string before = catalog.export_all_json_text();
    const std::string message = refusal_of([&] { catalog.add(own_wire("tail", "no-such")); });
    CHECK(holds(message, "wire \"tail\" (insulation names insulation \"no-such\")"));
    CHECK(holds(message, "nothing was changed"));
    CHECK((catalog.export_all_json_text() == before));
    CHECK(catalog.history().empty());
    catalog.add(own_insulation("no-such"));
    CHECK_NOTHROW(catalog.add(own_wire("tail", "no-such")));
}

TEST_CASE("a part that others name cannot be removed, and they are named") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_insulation("own"));
    catalog.add(own_wire("tail", "own"));
    CHECK(holds(refusal_of([&] { catalog.remove(PartKind::insulation, "own"); }),
                "remove insulation \"own\" is refused, nothing was changed: wire \"tail\""));
    CHECK(catalog.parts().find(PartKind::insulation, "own").has_value());
    catalog.remove(PartKind::wire, "tail");
    CHECK_NOTHROW(catalog.remove(PartKind::insulation, "own"));
    // The same holds for rows of the starter; a long list is cut.
    const std::string message = refusal_of([&] { catalog.remove(PartKind::alloy, "nicr-80-20"); });
    CHECK(holds(message, "names alloy \"nicr-80-20\""));
    CHECK(catalog.parts().find(PartKind::alloy, "nicr-80-20").has_value());
}

TEST_CASE("two catalogs on one file see each other's changes") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    Catalog one = Catalog::open(path);
    Catalog two = Catalog::open(path);
    CHECK_FALSE(two.parts().find(PartKind::panel, "own").has_value());
    one.add(own_panel("own"));
    CHECK(two.parts().find(PartKind::panel, "own").has_value());
    CHECK(two.history().size() == 1);
    CHECK_THROWS_AS(two.add(own_panel("own")), CatalogError);
    two.remove(PartKind::panel, "own");
    CHECK_FALSE(one.parts().find(PartKind::panel, "own").has_value());
    CHECK_THROWS_AS(one.replace(own_panel("own")), NotFound);
    one.undo();
    CHECK(two.parts().find(PartKind::panel, "own").has_value());
}
