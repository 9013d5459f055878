#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <string>
#include <tuple>

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/catalog/schema.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::PartKind;

namespace {

/// A catalog with one panel, changed past the library as a stranger would.
struct StrangersFile {
    TempFolder folder{};
    std::string path = folder.file("a.heatmatch");

    StrangersFile() { Catalog::open(path).add(own_panel("own")); }
    void run(const std::string& sql) const {
        SQLite::Database(path, SQLite::OPEN_READWRITE).exec(sql);
    }
    /// Writes a table's statement anew.
    void rewrite(const std::string& table, const std::string& old_text,
                 const std::string& new_text) const {
        SQLite::Database file(path, SQLite::OPEN_READWRITE);
        file.exec("PRAGMA writable_schema = ON");
        SQLite::Statement change(
            file, "UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE name = ?");
        change.bind(1, old_text);
        change.bind(2, new_text);
        change.bind(3, table);
        REQUIRE(change.exec() == 1);
    }
    [[nodiscard]] std::string opening() const {
        return refusal_of<CatalogError>([this] { std::ignore = Catalog::open(path, 10).parts(); });
    }
};

}  // namespace

TEST_CASE("a file with a trigger, a view, an index or a foreign table is refused, and named") {
    const struct {
        const char* sql;
        const char* named;
    } objects[] = {
        {"CREATE TRIGGER odd AFTER UPDATE ON panels BEGIN UPDATE panels SET v_oc = 1.0; END",
         "the trigger \"odd\""},
        {"CREATE VIEW odd AS WITH RECURSIVE r(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM r) "
         "SELECT n FROM r",
         "the view \"odd\""},
        {"CREATE INDEX odd ON panels (label)", "the index \"odd\""},
        {"CREATE TABLE odd (text TEXT)", "the table \"odd\""},
        {"ALTER TABLE panels ADD COLUMN odd TEXT", "an altered table \"panels\" (at \"odd\")"},
        {"ALTER TABLE panels DROP COLUMN notes; ALTER TABLE panels ADD COLUMN notes TEXT AS "
         "('x')",
         "an altered table \"panels\" (at \"notes\")"},
        {"ALTER TABLE panels DROP COLUMN notes; ALTER TABLE panels ADD COLUMN notes TEXT DEFAULT "
         "'x'",
         "an altered table \"panels\" (at \"notes\")"},
        {"DROP TABLE removed; CREATE TABLE removed (kind TEXT, id TEXT)",
         "an altered table \"removed\""},
        {"ALTER TABLE panels RENAME TO kept; CREATE VIEW panels AS SELECT * FROM kept",
         "which heatmatch does not write"},
    };
    for (const auto& object : objects) {
        CAPTURE(object.sql);
        const StrangersFile file;
        file.run(object.sql);
        CHECK(holds(file.opening(), object.named));
        CHECK(holds(file.opening(), "which heatmatch does not write"));
        CHECK(holds(file.opening(), "ask for the parts as JSON"));
    }
}

TEST_CASE("a table that would silently leave out or take other rows is refused") {
    const struct {
        const char* table;
        const char* old_text;
        const char* new_text;
    } changes[] = {
        {"panels", "PRIMARY KEY NOT NULL", "PRIMARY KEY ON CONFLICT IGNORE NOT NULL"},
        {"panels", "label TEXT NOT NULL", "label TEXT NOT NULL ON CONFLICT REPLACE"},
        {"panels", "CHECK (v_oc > 0", "CHECK (abs(v_oc) > 0"},
        {"panels", "label TEXT NOT NULL", "label TEXT COLLATE NOCASE NOT NULL"},
        {"panels", "STRICT, WITHOUT ROWID", "STRICT"},
        {"history", "TEXT NOT NULL", "TEXT NOT NULL ON CONFLICT IGNORE"},
    };
    for (const auto& change : changes) {
        CAPTURE(change.new_text);
        const StrangersFile file;
        file.rewrite(change.table, change.old_text, change.new_text);
        const std::string said = file.opening();
        const std::string table = change.table;
        // SQLite itself finds the form of the table to be wrong where it had rows another way.
        const bool refused = said.find("an altered table \"" + table + '"') != std::string::npos ||
                             said.find("damaged") != std::string::npos;
        CHECK_MESSAGE(refused, said);
    }
}

TEST_CASE("a table that is missing is named") {
    const StrangersFile file;
    file.run("DROP TABLE covers");
    CHECK(holds(file.opening(), "lacks its table \"covers\""));
}

TEST_CASE("objects added while the file is open are noticed at the next read and change") {
    const StrangersFile file;
    Catalog catalog = Catalog::open(file.path);
    CHECK(has_panel(catalog, "own"));
    file.run("CREATE TRIGGER odd AFTER INSERT ON panels BEGIN UPDATE panels SET v_oc = 1.0; END");
    CHECK_THROWS_AS(std::ignore = catalog.parts(), CatalogError);
    CHECK(holds(refusal_of([&] {
                    catalog.edit(PartKind::panel, "own", {{"v_oc", 38.0}});
                }),
                "the trigger \"odd\""));
    file.run("DROP TRIGGER odd");
    CHECK_NOTHROW(catalog.edit(PartKind::panel, "own", {{"v_oc", 38.0}}));
    CHECK(catalog.history().size() == 2);
}

TEST_CASE("tables as older versions wrote them are taken") {
    const StrangersFile file;
    // The first version had no word for the null of a list, and other limits.
    file.rewrite("panels", "source_of IS NULL OR json_valid(source_of)", "json_valid(source_of)");
    file.rewrite("panels", "v_oc <= 2000", "v_oc <= 1500");
    file.run("ALTER TABLE panels DROP COLUMN bifaciality; PRAGMA user_version = 1");
    Catalog catalog = Catalog::open(file.path);
    CHECK(has_panel(catalog, "own"));
    CHECK_NOTHROW(catalog.edit(PartKind::panel, "own", {{"bifaciality", 0.7}}));
    CHECK_NOTHROW(std::ignore = Catalog::open(file.path).parts());
}

TEST_CASE("a row longer than any part is refused, not read") {
    const StrangersFile file;
    file.run("UPDATE panels SET notes = printf('%.*c', 20000000, 'x')");
    CHECK(holds(file.opening(), "too big"));
}

TEST_CASE("a long history is read in linear time") {
    const StrangersFile file;
    // 60,000 entries: their square would be stopped as work without end.
    file.run(
        "INSERT INTO history (at_utc, action, undoes) WITH RECURSIVE r(n) AS (SELECT 1 UNION ALL "
        "SELECT n + 1 FROM r WHERE n < 60000) SELECT '2026-01-01T00:00:00Z', 'x', n FROM r");
    const auto history = Catalog::open(file.path).history();
    CHECK(history.size() == 60001);
    CHECK(history.front().rows == 1);
    CHECK(history[59998].undone);
    CHECK_FALSE(history.back().undone);
}
