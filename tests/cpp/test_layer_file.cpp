#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <filesystem>
#include <fstream>
#include <string>
#include <tuple>

#include <SQLiteCpp/Database.h>
#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::Catalog;
using heatmatch::FileError;
using heatmatch::PartKind;
namespace fs = std::filesystem;

TEST_CASE("an empty file that is looked at stays empty, and is filled by its first change") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    std::ofstream(path).close();
    {
        Catalog catalog = Catalog::open(path);
        CHECK(catalog.parts().panels == Catalog::starter().parts().panels);
        CHECK(catalog.history().empty());
        CHECK_FALSE(catalog.is_own(PartKind::panel, "own"));
        CHECK(catalog.export_json_text() == Catalog::starter().export_json_text());
        CHECK(holds(refusal_of([&] { catalog.undo(); }), "nothing to undo"));
        CHECK_THROWS_AS(catalog.remove(PartKind::panel, "nobody"), heatmatch::NotFound);
    }
    CHECK(fs::file_size(path) == 0);
    Catalog catalog = Catalog::open(path);
    Catalog other = Catalog::open(path);
    catalog.add(own_panel("own"));
    CHECK(has_panel(other, "own"));
    other.add(own_panel("second"));
    CHECK(has_panel(catalog, "second"));
    CHECK(catalog.history().size() == 2);
    CHECK(SQLite::Database(path).execAndGet("PRAGMA journal_mode").getString() == "wal");
}

TEST_CASE("two programs that fill one empty file both keep their rows") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    std::ofstream(path).close();
    Catalog catalog = Catalog::open(path);
    Catalog other = Catalog::open(path);
    CHECK(catalog.history().empty());
    CHECK(other.history().empty());
    catalog.add(own_panel("own"));
    other.add(own_panel("second"));
    CHECK(Catalog::open(path).history().size() == 2);
}

TEST_CASE("a file that was replaced or deleted while it is open accepts no change") {
    for (const bool replaced : {true, false}) {
        CAPTURE(replaced);
        const TempFolder folder;
        const std::string path = folder.file("a.heatmatch");
        const std::string copy = folder.file("copy.heatmatch");
        Catalog catalog = Catalog::open(path);
        catalog.add(own_panel("own"));
        catalog.save_copy(copy);
        catalog.add(own_panel("later"));
        if (replaced) {
            fs::rename(copy, path);
        } else {
            fs::remove(path);
        }
        const auto add = [&] { catalog.add(own_panel("lost")); };
        const auto undo = [&] { catalog.undo(); };
        CHECK_THROWS_AS(add(), FileError);
        CHECK(holds(refusal_of(add), "was replaced or deleted since it was opened; nothing was"));
        CHECK(holds(refusal_of(add), "save what this one holds (save_copy or export_json)"));
        CHECK(holds(refusal_of(undo), "was replaced or deleted"));
        // Its content can be saved.
        CHECK(has_panel(catalog, "later"));
        CHECK_FALSE(has_panel(catalog, "lost"));
        catalog.save_copy(folder.file("saved.heatmatch"));
        CHECK(has_panel(Catalog::open(folder.file("saved.heatmatch")), "later"));
        catalog.close();
        Catalog again = Catalog::open(path);
        CHECK(has_panel(again, "own") == replaced);
        CHECK_FALSE(has_panel(again, "later"));
        CHECK_NOTHROW(again.add(own_panel("new")));
    }
}

TEST_CASE("closing a file that was replaced leaves the log of the new one alone") {
    const TempFolder folder;
    const std::string path = folder.file("a.heatmatch");
    const std::string aside = folder.file("aside.heatmatch");
    Catalog first = Catalog::open(path);
    first.add(own_panel("own"));
    for (const char* end : {"", "-wal", "-shm"}) fs::rename(path + end, aside + end);
    Catalog second = Catalog::open(path);
    second.add(own_panel("second"));
    REQUIRE(fs::file_size(path + "-wal") > 0);
    first.close();
    CHECK(fs::file_size(path + "-wal") > 0);
    CHECK(has_panel(Catalog::open(path), "second"));
}
