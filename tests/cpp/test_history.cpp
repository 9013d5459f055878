#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include <SQLiteCpp/Database.h>
#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::Error;
using heatmatch::HistoryEntry;
using heatmatch::Panel;
using heatmatch::PartKind;

namespace {

double v_oc_of(const Catalog& catalog, const std::string& id) {
    return heatmatch::find_panel(catalog.parts(), id).v_oc;
}

/// Changes the file without the library, as another program would.
void edit(const std::string& path, const std::string& sql) {
    SQLite::Database(path, SQLite::OPEN_READWRITE).exec(sql);
}

std::string rows_json(const std::string& ids_of_panels) {
    std::string rows;
    for (const char id : ids_of_panels) {
        rows +=
            (rows.empty() ? "" : ", ") + std::string(R"({"id": ")") + id +
            R"(", "label": "L", "v_oc": 20, "i_sc": 8, "source": "s", "source_kind": "derived"})";
    }
    return R"({"heatmatch_catalog": 1, "panels": [)" + rows + "]}";
}

}  // namespace

TEST_CASE("every call leaves one entry, with its action") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("own"));
    catalog.replace(own_panel("own", 38.0));
    catalog.remove(PartKind::panel, "own");
    catalog.import_json_text(rows_json("abc"), "mine.json");
    const std::vector<HistoryEntry> history = catalog.history();
    REQUIRE(history.size() == 4);
    const char* actions[] = {"add panel \"own\"", "replace panel \"own\"", "remove panel \"own\"",
                             "import mine.json"};
    for (std::size_t n = 0; n < history.size(); ++n) {
        CHECK(history[n].number == static_cast<int>(n) + 1);
        CHECK(history[n].action == actions[n]);
        CHECK(history[n].undoes == 0);
        CHECK_FALSE(history[n].undone);
        // ISO 8601 in UTC: 2024-05-01T12:34:56Z.
        REQUIRE(history[n].at_utc.size() == 20);
        CHECK(history[n].at_utc[10] == 'T');
        CHECK(history[n].at_utc[19] == 'Z');
    }
    CHECK(history[0].rows == 1);
    CHECK(history[3].rows == 3);
}

TEST_CASE("undo goes back step by step and appends an entry for each step") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    {
        Catalog catalog = Catalog::open(path);
        catalog.add(own_panel("own", 30.0));
        catalog.replace(own_panel("own", 31.0));
        catalog.replace(own_panel("own", 32.0));
    }
    // The history is in the file, not in the object.
    Catalog catalog = Catalog::open(path);
    const HistoryEntry undone = catalog.undo();
    CHECK(undone.number == 4);
    CHECK(undone.undoes == 3);
    CHECK(undone.rows == 1);
    CHECK(undone.action == "undo 3 (replace panel \"own\")");
    CHECK(v_oc_of(catalog, "own") == 31.0);
    CHECK(catalog.undo().undoes == 2);
    CHECK(v_oc_of(catalog, "own") == 30.0);
    CHECK(catalog.undo().undoes == 1);
    CHECK_FALSE(has_panel(catalog, "own"));
    const std::vector<HistoryEntry> history = catalog.history();
    REQUIRE(history.size() == 6);
    CHECK(std::count_if(history.begin(), history.end(),
                        [](const HistoryEntry& entry) { return entry.undone; }) == 3);
    CHECK_THROWS_AS(catalog.undo(), CatalogError);
    CHECK(
        holds(refusal_of([&] { catalog.undo(); }), "there is nothing to undo in \"" + path + '"'));
    CHECK(catalog.history().size() == 6);
}

TEST_CASE("a change after an undo can be undone, and then the change before it") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("first"));
    catalog.add(own_panel("second"));
    catalog.undo();
    catalog.add(own_panel("third"));
    CHECK(catalog.undo().undoes == 4);
    CHECK_FALSE(has_panel(catalog, "third"));
    CHECK(catalog.undo().undoes == 1);
    CHECK_FALSE(has_panel(catalog, "first"));
}

TEST_CASE("undo falls back to the starter's row") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string before = catalog.export_all_json_text();
    Panel changed = Catalog::starter().parts().panels.front();
    const std::string id = changed.id;
    const double starter_v_oc = changed.v_oc;
    changed.v_oc += 1.0;
    catalog.replace(changed);
    catalog.undo();
    CHECK(v_oc_of(catalog, id) == starter_v_oc);
    CHECK_FALSE(catalog.is_own(PartKind::panel, id));
    catalog.remove(PartKind::panel, id);
    catalog.undo();
    CHECK(v_oc_of(catalog, id) == starter_v_oc);
    // An own row over the starter's, removed: undo brings the own row back, not the starter's.
    catalog.replace(changed);
    catalog.remove(PartKind::panel, id);
    CHECK_FALSE(has_panel(catalog, id));
    catalog.undo();
    CHECK(v_oc_of(catalog, id) == changed.v_oc);
    catalog.undo();
    // Added over a removed row of the starter: undo removes it again.
    catalog.remove(PartKind::panel, id);
    catalog.add(changed);
    catalog.undo();
    CHECK_FALSE(has_panel(catalog, id));
    catalog.undo();
    CHECK((catalog.export_all_json_text() == before));
    CHECK(catalog.export_json_text() == "{\n  \"heatmatch_catalog\": 1\n}\n");
}

TEST_CASE("undo reverses a whole import") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("a", 30.0));
    const std::string before = catalog.export_all_json_text();
    catalog.import_json_text(rows_json("abcd"), "mine.json");
    CHECK(v_oc_of(catalog, "a") == 20.0);
    const HistoryEntry undone = catalog.undo();
    CHECK(undone.rows == 4);
    CHECK(undone.action == "undo 2 (import mine.json)");
    CHECK(v_oc_of(catalog, "a") == 30.0);
    CHECK_FALSE(has_panel(catalog, "b"));
    CHECK((catalog.export_all_json_text() == before));
}

TEST_CASE("undo reverses an import that removes an id twice") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string before = catalog.export_all_json_text();
    const std::string id = Catalog::starter().parts().panels.front().id;
    const std::string text =
        R"({"heatmatch_catalog": 1, "removed": {"panels": [")" + id + R"(", ")" + id + R"("]}})";
    // Refusing the list is as good as taking it back.
    if (refusal_of([&] { catalog.import_json_text(text, "mine.json"); }) == "(accepted)") {
        CHECK(catalog.history().front().rows == 1);
        catalog.undo();
    }
    CHECK((catalog.export_all_json_text() == before));
}

TEST_CASE("undo refuses where another program changed the row since") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    Catalog catalog = Catalog::open(path);
    catalog.add(own_panel("own", 30.0));
    catalog.replace(own_panel("own", 31.0));
    edit(path, "UPDATE panels SET v_oc = 35.0 WHERE id = 'own'");
    CHECK_THROWS_AS(catalog.undo(), CatalogError);
    CHECK(holds(refusal_of([&] { catalog.undo(); }),
                "entry 2 (replace panel \"own\") cannot be undone: panel \"own\" was changed "
                "afterwards; edit it by hand"));
    CHECK(v_oc_of(catalog, "own") == 35.0);
    CHECK(catalog.history().size() == 2);
    edit(path, "DELETE FROM panels WHERE id = 'own'");
    CHECK_THROWS_AS(catalog.undo(), CatalogError);
    CHECK_FALSE(has_panel(catalog, "own"));
    // Brought back as it was left, it can be undone again.
    edit(path,
         "INSERT INTO panels (id, label, v_oc, i_sc, source, source_kind) VALUES "
         "('own', 'Own', 31.0, 8.66, 'label', 'nameplate')");
    CHECK_NOTHROW(catalog.undo());
    CHECK(v_oc_of(catalog, "own") == 30.0);
}

TEST_CASE("undo of an import refuses as a whole where one row was changed since") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    Catalog catalog = Catalog::open(path);
    catalog.import_json_text(rows_json("abc"), "mine.json");
    edit(path, "UPDATE panels SET label = 'x' WHERE id = 'b'");
    const std::string before = catalog.export_all_json_text();
    CHECK(holds(refusal_of([&] { catalog.undo(); }), "panel \"b\" was changed afterwards"));
    CHECK((catalog.export_all_json_text() == before));
}

TEST_CASE("undo checks references as any change does") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    Catalog catalog = Catalog::open(path);
    catalog.add(heatmatch::Insulation{
        .id = "own",
        .label = "Own",
        .family = "own",
        .limit_c = 100.0,
        .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}});
    edit(path,
         "INSERT INTO wires (id, label, conductor, plating, area_mm2, insulation, source, "
         "source_kind) VALUES ('w', 'W', 'copper', 'bare', 4.0, 'own', 's', 'derived')");
    CHECK(holds(refusal_of([&] { catalog.undo(); }), "wire \"w\" (insulation names"));
    CHECK(catalog.parts().find(PartKind::insulation, "own").has_value());
}
