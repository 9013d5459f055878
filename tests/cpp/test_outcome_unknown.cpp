#include "failing_sync.hpp"
#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <filesystem>
#include <string>
#include <tuple>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::OutcomeUnknown;
using heatmatch::PartKind;

namespace {

/// A catalog of which the last undo met a disk that fails.
struct FailedUndo {
    TempFolder folder{};
    FailingSync disk{};
    std::string path = folder.file("a.heatmatch");
    std::string said{};

    /// Leaves the file as a power failure would: the content of the files at the failure.
    std::string after_power_cut = folder.file("after.heatmatch");

    FailedUndo() {
        Catalog catalog = Catalog::open(path);
        catalog.add(own_panel("first"));
        catalog.add(own_panel("second"));
        FailingSync::fail(true);
        said = refusal_of<OutcomeUnknown>([&] { catalog.undo(); });
        FailingSync::fail(false);
        for (const char* end : {"", "-wal"}) {
            std::filesystem::copy_file(path + end, after_power_cut + end);
        }
        CHECK_THROWS_AS(catalog.add(own_panel("third")), CatalogError);
        CHECK(holds(refusal_of([&] { catalog.undo(2); }), "accepts no change until it is opened"));
        CHECK(has_panel(catalog, "first"));
    }
};

}  // namespace

TEST_CASE("a commit that the disk does not confirm is reported as unknown, with what to check") {
    const FailedUndo failed;
    CHECK(holds(failed.said, "whether \"undo 2 (add panel \"second\")\" was kept in \""));
    CHECK(holds(failed.said, "is not known: disk I/O error"));
    CHECK(holds(failed.said, "the change was kept if entry 3 is there"));
    CHECK(holds(failed.said, "to try again, undo entry 2 by its number"));
    CHECK(failed.said.find("nothing was changed") == std::string::npos);
}

TEST_CASE("an undo that is tried again by its number is never made twice") {
    const FailedUndo failed;
    for (const std::string& path : {failed.path, failed.after_power_cut}) {
        CAPTURE(path);
        Catalog catalog = Catalog::open(path);
        const bool kept = catalog.history().size() == 3;
        const std::string again = refusal_of([&] { catalog.undo(2); });
        if (kept) CHECK(holds(again, "was already undone, by entry 3; nothing was changed"));
        if (!kept) CHECK(again == "(accepted)");
        CHECK(has_panel(catalog, "first"));
        CHECK_FALSE(has_panel(catalog, "second"));
        CHECK(catalog.history().size() == 3);
    }
    // The frames of the undo were in the log, so that after a power cut the change is there:
    // "nothing was changed" would have been false.
    CHECK(Catalog::open(failed.after_power_cut).history()[2].undoes == 2);
}

TEST_CASE("a change that fails before its commit changed nothing") {
    const TempFolder folder;
    const FailingSync disk;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.add(own_panel("own"));
    FailingSync::fail(true);
    CHECK_THROWS_AS(catalog.add(own_panel("own")), CatalogError);
    CHECK_THROWS_AS(catalog.remove(PartKind::panel, "nobody"), heatmatch::NotFound);
    CHECK_THROWS_AS(catalog.add(own_panel("second")), OutcomeUnknown);
    FailingSync::fail(false);
    Catalog again = Catalog::open(catalog.path());
    CHECK(has_panel(again, "own"));
}
