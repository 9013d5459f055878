#include "refusal.hpp"
#include "temp_folder.hpp"

#include <filesystem>
#include <set>
#include <sstream>
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
using heatmatch::Field;
using heatmatch::FieldKind;
using heatmatch::PartKindInfo;
namespace fs = std::filesystem;

namespace {

/// An open database with the tables of a catalog file.
SQLite::Database empty_catalog() {
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    for (const std::string& statement : heatmatch::schema_statements()) database.exec(statement);
    return database;
}

/// Error of SQLite for a statement; empty if accepted.
std::string failure(SQLite::Database& database, const std::string& sql) {
    try {
        database.exec(sql);
    } catch (const SQLite::Exception& error) {
        return error.what();
    }
    return {};
}

std::string exact(double value) {
    std::ostringstream text;
    text.precision(17);
    text << value;
    return text.str();
}

/// Puts one value in the row of a kind that has nothing else wrong.
class RowOf {
  public:
    explicit RowOf(const PartKindInfo& info) : info_(info), database_(empty_catalog()) {}

    /// Error of SQLite for a row with only this field set.
    std::string with(const Field& changed, const std::string& sql_value) {
        std::string names;
        std::string values;
        for (const Field& field : info_.fields) {
            const bool is_it = field.name == changed.name;
            if (!is_it && !field.required) continue;
            names += (names.empty() ? "" : ", ") + std::string(field.name);
            values += (values.empty() ? "" : ", ") + (is_it ? sql_value : good(field));
        }
        const std::string table(info_.plural);
        const std::string said =
            failure(database_, "INSERT INTO " + table + " (" + names + ") VALUES (" + values + ")");
        database_.exec("DELETE FROM " + table);
        return said;
    }

    static std::string good(const Field& field) {
        switch (field.kind) {
            case FieldKind::number:
                return exact(field.range.high);
            case FieldKind::count:
                return exact(field.range.high);
            case FieldKind::flag:
                return "1";
            case FieldKind::choice:
                return "'" + std::string(field.words.back()) + "'";
            case FieldKind::text:
            case FieldKind::slug:
            case FieldKind::reference:
                return "'a-b_c.1'";
            case FieldKind::record:
            case FieldKind::text_map:
                return "'{}'";
            default:
                return "'[]'";
        }
    }

  private:
    const PartKindInfo& info_;
    SQLite::Database database_;
};

std::string constraint(const PartKindInfo& info, const Field& field, const std::string& rule) {
    return std::string(info.name) + '_' + std::string(field.name) + '_' + rule;
}

}  // namespace

TEST_CASE("there is one strict table a kind, and those of removals and history") {
    SQLite::Database database = empty_catalog();
    std::set<std::string> tables;
    SQLite::Statement query(database,
                            "SELECT name, sql, strict FROM sqlite_master JOIN "
                            "(SELECT name AS listed, strict FROM pragma_table_list) "
                            "ON name = listed WHERE type = 'table'");
    while (query.executeStep()) {
        CAPTURE(query.getColumn(0).getString());
        tables.insert(query.getColumn(0).getString());
        CHECK(query.getColumn(2).getInt() == 1);
        CHECK(holds(query.getColumn(1).getString(), "STRICT"));
    }
    std::set<std::string> expected{"removed", "history", "history_rows"};
    for (const PartKindInfo& info : heatmatch::part_kinds()) expected.emplace(info.plural);
    CHECK(tables == expected);
}

TEST_CASE("a table has a column for each field of its kind, in their order") {
    SQLite::Database database = empty_catalog();
    for (const PartKindInfo& info : heatmatch::part_kinds()) {
        CAPTURE(std::string(info.name));
        SQLite::Statement query(
            database, "SELECT name FROM pragma_table_info('" + std::string(info.plural) + "')");
        for (const Field& field : info.fields) {
            REQUIRE(query.executeStep());
            CHECK(query.getColumn(0).getString() == std::string(field.name));
        }
        CHECK_FALSE(query.executeStep());
    }
}

TEST_CASE("unknown values are null in every column that is not required") {
    for (const PartKindInfo& info : heatmatch::part_kinds()) {
        RowOf row(info);
        for (const Field& field : info.fields) {
            CAPTURE(std::string(info.name) + "." + std::string(field.name));
            const std::string said = row.with(field, "NULL");
            if (field.required) {
                CHECK(holds(said, "NOT NULL constraint failed"));
            } else {
                CHECK(said.empty());
            }
            CHECK(row.with(field, RowOf::good(field)).empty());
        }
    }
}

TEST_CASE("a number out of the field's range breaks a constraint that names it") {
    for (const PartKindInfo& info : heatmatch::part_kinds()) {
        RowOf row(info);
        for (const Field& field : info.fields) {
            const bool count = field.kind == FieldKind::count;
            if (field.kind != FieldKind::number && !count) continue;
            const std::string name = constraint(info, field, "range");
            CAPTURE(name);
            const double step = count ? 1.0 : 1e-9 * (field.range.high - field.range.low);
            CHECK(holds(row.with(field, exact(field.range.high + step)), name));
            CHECK(holds(row.with(field, exact(field.range.low - step)), name));
            const std::string at_low = row.with(field, exact(field.range.low));
            CHECK((at_low.empty() != field.range.low_open));
            CHECK(holds(row.with(field, "'many'"), "cannot store TEXT value"));
            if (count) CHECK(holds(row.with(field, "1.5"), "cannot store REAL value in INTEGER"));
        }
    }
}

TEST_CASE("words, flags, names and tables are checked by constraints that name them") {
    for (const PartKindInfo& info : heatmatch::part_kinds()) {
        RowOf row(info);
        for (const Field& field : info.fields) {
            CAPTURE(std::string(info.name) + "." + std::string(field.name));
            switch (field.kind) {
                case FieldKind::choice:
                    CHECK(
                        holds(row.with(field, "'no such word'"), constraint(info, field, "words")));
                    for (const std::string_view word : field.words) {
                        CHECK(row.with(field, "'" + std::string(word) + "'").empty());
                    }
                    break;
                case FieldKind::flag:
                    CHECK(holds(row.with(field, "2"), constraint(info, field, "form")));
                    CHECK(row.with(field, "0").empty());
                    break;
                case FieldKind::slug:
                case FieldKind::reference:
                    for (const char* bad : {"''", "'Barn'", "'a b'", "'bärn'", "'a/b'"}) {
                        CHECK(holds(row.with(field, bad), constraint(info, field, "form")));
                    }
                    CHECK(holds(row.with(field, "'" + std::string(81, 'a') + "'"),
                                constraint(info, field, "form")));
                    break;
                case FieldKind::rows:
                case FieldKind::record:
                case FieldKind::text_map:
                    CHECK(holds(row.with(field, "'{broken'"), constraint(info, field, "form")));
                    break;
                default:
                    break;
            }
        }
    }
}

TEST_CASE("an id is unique in its table") {
    SQLite::Database database = empty_catalog();
    const std::string row =
        "INSERT INTO insulations (id, label, family, limit_c, source, source_kind) VALUES "
        "('pvc', 'PVC', 'PVC', 70.0, 's', 'derived')";
    CHECK(failure(database, row).empty());
    CHECK(holds(failure(database, row), "UNIQUE constraint failed: insulations.id"));
}

// A constraint can only check one column; what another hand wrote past the library is checked when
// it is read.
TEST_CASE("a row that no library wrote is refused when it is read, and named") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    const Catalog catalog = Catalog::open(path);
    SQLite::Database file(path, SQLite::OPEN_READWRITE);
    file.exec(
        "INSERT INTO panels (id, label, v_oc, i_sc, v_mp, source, source_kind) VALUES "
        "('odd', 'Odd', 37.5, 8.0, 38.0, 's', 'derived')");
    try {
        std::ignore = catalog.parts();
        FAIL("a panel whose v_mp is above its v_oc was read");
    } catch (const CatalogError& error) {
        CHECK(holds(error.what(), "holds a row that cannot be used: panel \"odd\": v_mp = 38 V"));
        CHECK(holds(error.what(), path));
    }
    file.exec("DELETE FROM panels");
    CHECK_NOTHROW(std::ignore = catalog.parts());
    file.exec(
        "INSERT INTO panels (id, label, v_oc, i_sc, listed_fit, source, source_kind) VALUES "
        "('odd', 'Odd', 37.5, 8.0, '{\"light_current_a\": 1}', 's', 'derived')");
    CHECK_THROWS_AS(std::ignore = catalog.parts(), heatmatch::Error);
}

TEST_CASE("a file of an older version gets the columns it lacks and keeps its rows") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    {
        Catalog catalog = Catalog::open(path);
        catalog.add(heatmatch::Panel{
            .id = "own",
            .label = "Own",
            .v_oc = 37.5,
            .i_sc = 8.0,
            .provenance = {.source = "s", .source_kind = heatmatch::SourceKind::derived}});
    }
    {
        SQLite::Database file(path, SQLite::OPEN_READWRITE);
        file.exec("ALTER TABLE panels DROP COLUMN bifaciality");
        file.exec("ALTER TABLE wires DROP COLUMN direct_burial");
        file.exec("PRAGMA user_version = 0");
    }
    Catalog catalog = Catalog::open(path);
    CHECK(heatmatch::find_panel(catalog.parts(), "own").v_oc == 37.5);
    auto changed = heatmatch::find_panel(catalog.parts(), "own");
    changed.bifaciality = 0.7;
    catalog.replace(changed);
    CHECK(heatmatch::find_panel(catalog.parts(), "own").bifaciality == 0.7);
    SQLite::Database file(path, SQLite::OPEN_READWRITE);
    CHECK(file.execAndGet("PRAGMA user_version").getInt() == heatmatch::schema_version);
    CHECK(holds(failure(file, "UPDATE panels SET bifaciality = 2.0"), "panel_bifaciality_range"));
}
