#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <filesystem>
#include <fstream>
#include <string>
#include <tuple>

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/catalog/schema.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::Error;
using heatmatch::FileError;
using heatmatch::PartKind;
namespace fs = std::filesystem;

namespace {

/// The catalog file opened past the library.
SQLite::Database raw(const std::string& path) {
    return {path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
}

std::string opening(const std::string& path) {
    return refusal_of([&] { std::ignore = Catalog::open(path, 10); });
}

}  // namespace

TEST_CASE("a file is created where there is none, and opened again") {
    const TempFolder folder;
    const std::string path = folder.file("mine é 'x'.heatmatch");
    {
        Catalog catalog = Catalog::open(path);
        CHECK(catalog.path() == path);
        CHECK(catalog.history().empty());
        CHECK(catalog.parts().panels == Catalog::starter().parts().panels);
        catalog.add(own_panel("own"));
    }
    CHECK(fs::exists(path));
    CHECK(has_panel(Catalog::open(path), "own"));
}

TEST_CASE("an empty file is treated as a new one") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    std::ofstream(path).close();
    REQUIRE(fs::file_size(path) == 0);
    Catalog catalog = Catalog::open(path);
    catalog.add(own_panel("own"));
    CHECK(has_panel(catalog, "own"));
}

TEST_CASE("the file is marked, logged ahead and written through") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    const Catalog catalog = Catalog::open(path);
    SQLite::Database file = raw(path);
    CHECK(file.execAndGet("PRAGMA application_id").getInt() == heatmatch::catalog_application_id);
    CHECK(file.execAndGet("PRAGMA user_version").getInt() == heatmatch::schema_version);
    CHECK(file.execAndGet("PRAGMA journal_mode").getString() == "wal");
    // Source: arithmetic, the letters h, m, a, t.
    CHECK(heatmatch::catalog_application_id == (('h' << 24) | ('m' << 16) | ('a' << 8) | 't'));
}

TEST_CASE("after closing, the log is empty and a plain copy of the file is whole") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    {
        Catalog catalog = Catalog::open(path);
        for (int n = 0; n < 20; ++n) catalog.add(own_panel("own-" + std::to_string(n)));
    }
    std::error_code missing;
    const auto log_size = fs::file_size(path + "-wal", missing);
    CHECK((missing || log_size == 0));
    fs::copy_file(path, folder.file("copy.heatmatch"));
    const Catalog copy = Catalog::open(folder.file("copy.heatmatch"));
    CHECK(has_panel(copy, "own-0"));
    CHECK(has_panel(copy, "own-19"));
    CHECK(copy.history().size() == 20);
}

TEST_CASE("closing brings the log in while another catalog still has the file open") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    const Catalog other = Catalog::open(path);
    CHECK_FALSE(has_panel(other, "own"));
    {
        Catalog catalog = Catalog::open(path);
        catalog.add(own_panel("own"));
    }
    CHECK(fs::file_size(path + "-wal") == 0);
    fs::copy_file(path, folder.file("copy.heatmatch"));
    CHECK(has_panel(Catalog::open(folder.file("copy.heatmatch")), "own"));
    CHECK(has_panel(other, "own"));
}

TEST_CASE("a copy is saved while the catalog is open, with its history") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("own"));
    const std::string path = folder.file("copy 'x'.heatmatch");
    catalog.save_copy(path);
    catalog.add(own_panel("later"));
    Catalog copy = Catalog::open(path);
    CHECK(has_panel(copy, "own"));
    CHECK_FALSE(has_panel(copy, "later"));
    CHECK(copy.history().size() == 1);
    CHECK(raw(path).execAndGet("PRAGMA application_id").getInt() ==
          heatmatch::catalog_application_id);
    copy.undo();
    CHECK_FALSE(has_panel(copy, "own"));
    CHECK(has_panel(catalog, "own"));
}

TEST_CASE("a copy overwrites nothing, and needs a writable folder") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("own"));
    heatmatch::write_text_file(folder.file("taken"), "mine");
    for (const std::string& taken : {folder.file("taken"), folder.file(""), catalog.path()}) {
        CHECK_THROWS_AS(catalog.save_copy(taken), FileError);
        CHECK(holds(refusal_of([&] { catalog.save_copy(taken); }), "it exists; choose a new name"));
    }
    CHECK(heatmatch::read_text_file(folder.file("taken")) == "mine");
    const std::string nowhere = folder.file("no/such/folder/copy");
    CHECK_THROWS_AS(catalog.save_copy(nowhere), FileError);
    CHECK(holds(refusal_of([&] { catalog.save_copy(nowhere); }), nowhere));
    CHECK(holds(refusal_of([&] { catalog.save_copy("/proc/copy"); }), "/proc/copy"));
    CHECK(has_panel(catalog, "own"));
}

TEST_CASE("a path where no file can be is refused by name") {
    const TempFolder folder;
    for (const std::string& path :
         {folder.file(""), folder.file("no/such/folder/a.heatmatch"),
          std::string("/proc/a.heatmatch"), std::string("/dev/null/a.heatmatch")}) {
        CAPTURE(path);
        CHECK_THROWS_AS(std::ignore = Catalog::open(path, 10), FileError);
        CHECK(holds(opening(path), "cannot open \"" + path + "\""));
    }
    CHECK(holds(opening(folder.file("")), "it is a folder; name a file in it"));
    CHECK(holds(opening(folder.file("no/such/folder/a")), "check that the folder exists"));
}

// SQLite takes an empty name for a database of its own that is gone after closing.
TEST_CASE("a catalog without a path is refused, not kept nowhere") {
    CHECK(holds(opening(""), "cannot open"));
}

TEST_CASE("a file that is not a catalog is refused and unchanged") {
    const TempFolder folder;
    const std::string text = folder.file("text.heatmatch");
    const std::string content(2000, 'x');
    heatmatch::write_text_file(text, content);
    CHECK_THROWS_AS(std::ignore = Catalog::open(text, 10), CatalogError);
    CHECK(holds(opening(text), "is not a heatmatch catalog, or is damaged"));
    CHECK((heatmatch::read_text_file(text) == content));
    heatmatch::write_text_file(text, "{}");
    CHECK(holds(opening(text), "not a heatmatch catalog"));
    CHECK(heatmatch::read_text_file(text) == "{}");

    const std::string other = folder.file("other.sqlite");
    raw(other).exec("CREATE TABLE notes (text TEXT)");
    const std::string before = heatmatch::read_text_file(other);
    CHECK_THROWS_AS(std::ignore = Catalog::open(other, 10), CatalogError);
    CHECK(holds(opening(other), "is a SQLite file, but not a heatmatch catalog; name another"));
    CHECK((heatmatch::read_text_file(other) == before));
    CHECK_FALSE(fs::exists(other + "-wal"));
}

TEST_CASE("a catalog of a newer schema is refused and unchanged") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    std::ignore = Catalog::open(path);
    raw(path).exec("PRAGMA user_version = " + std::to_string(heatmatch::schema_version + 1));
    CHECK_THROWS_AS(std::ignore = Catalog::open(path, 10), CatalogError);
    CHECK(holds(opening(path),
                "was written by a newer heatmatch (schema " +
                    std::to_string(heatmatch::schema_version + 1) + ", this one reads up to " +
                    std::to_string(heatmatch::schema_version) + "); update heatmatch"));
    CHECK(raw(path).execAndGet("PRAGMA user_version").getInt() == heatmatch::schema_version + 1);
}

TEST_CASE("a catalog of an older schema gets its new columns and keeps its rows") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    {
        Catalog catalog = Catalog::open(path);
        catalog.add(
            heatmatch::Sheath{.id = "mine",
                              .label = "Mine",
                              .verdict_limit_c = 500.0,
                              .hard_limit_c = 600.0,
                              .provenance = {.source = "its maker",
                                             .source_kind = heatmatch::SourceKind::datasheet}});
    }
    // Objects that the first schema did not have.
    raw(path).exec("ALTER TABLE sheaths DROP COLUMN bare");
    raw(path).exec("PRAGMA user_version = 1");
    Catalog catalog = Catalog::open(path);
    CHECK(raw(path).execAndGet("PRAGMA user_version").getInt() == heatmatch::schema_version);
    const auto parts = catalog.parts();
    CHECK(heatmatch::find_sheath(parts, "mine").verdict_limit_c == 500.0);
    CHECK(!heatmatch::find_sheath(parts, "mine").bare);
    heatmatch::Sheath changed = heatmatch::find_sheath(parts, "mine");
    changed.bare = true;
    catalog.replace(changed);
    CHECK(heatmatch::find_sheath(catalog.parts(), "mine").bare == true);
}

TEST_CASE("a file that is cut short is refused, not half read") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    {
        Catalog catalog = Catalog::open(path);
        for (int n = 0; n < 30; ++n) catalog.add(own_panel("own-" + std::to_string(n)));
    }
    const auto whole = fs::file_size(path);
    for (const auto share : {10, 4, 2}) {
        fs::resize_file(path, whole * static_cast<std::uintmax_t>(share) / 20);
        CHECK_THROWS_AS(std::ignore = Catalog::open(path, 10).parts(), Error);
    }
}

TEST_CASE("a file that another program locks is refused, and nothing is changed") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    Catalog catalog = Catalog::open(path, 10);
    catalog.add(own_panel("own"));
    SQLite::Database other = raw(path);
    other.exec("BEGIN EXCLUSIVE");
    for (const std::string& message : {refusal_of([&] { catalog.add(own_panel("later")); }),
                                       refusal_of([&] { catalog.remove(PartKind::panel, "own"); }),
                                       refusal_of([&] { catalog.undo(); })}) {
        CHECK(holds(message, "is in use by another program; nothing was changed"));
    }
    // Readers are not held up by a writer.
    CHECK(has_panel(catalog, "own"));
    CHECK(has_panel(Catalog::open(path, 10), "own"));
    other.exec("ROLLBACK");
    CHECK_NOTHROW(catalog.add(own_panel("later")));
    CHECK(catalog.history().size() == 2);
}

TEST_CASE("a new file that another program locks is refused when it is opened") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    SQLite::Database other = raw(path);
    other.exec("BEGIN EXCLUSIVE");
    CHECK_THROWS_AS(std::ignore = Catalog::open(path, 10), CatalogError);
    CHECK(holds(opening(path), "is in use by another program; close it or try again"));
    other.exec("ROLLBACK");
    CHECK(opening(path) == "(accepted)");
}
