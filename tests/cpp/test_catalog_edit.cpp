#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <atomic>
#include <string>
#include <thread>
#include <tuple>
#include <vector>

#include <SQLiteCpp/Database.h>
#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::InvalidInput;
using heatmatch::NotFound;
using heatmatch::Panel;
using heatmatch::PartKind;

namespace {

Panel panel_of(const Catalog& catalog, const std::string& id) {
    return heatmatch::find_panel(catalog.parts(), id);
}

struct OneHand {
    TempFolder folder{};
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
};

/// One file, open twice.
struct TwoHands : OneHand {
    Catalog other = Catalog::open(folder.file("a.heatmatch"));
};

}  // namespace

TEST_CASE_FIXTURE(TwoHands,
                  "an edit of one field keeps what another hand changed in another field") {
    catalog.add(own_panel("own"));
    std::ignore = catalog.parts();
    other.edit(PartKind::panel, "own", {{"notes", std::string("weighed")}});
    const auto edited =
        std::get<Panel>(catalog.edit(PartKind::panel, "own", {{"v_oc", std::string("38 V")}}));
    CHECK(edited.v_oc == 38.0);
    CHECK(edited.notes == "weighed");
    CHECK(panel_of(other, "own") == edited);
    CHECK(catalog.history().back().action == "edit panel \"own\" (v_oc)");
    catalog.undo();
    CHECK(panel_of(other, "own").notes == "weighed");
    CHECK(panel_of(other, "own").v_oc == 37.5);
}

TEST_CASE_FIXTURE(OneHand, "an edit reads texts in their units and makes a field unknown") {
    catalog.add(own_panel("own", 40.0));
    // -120 mV/K of 30 V is -0.4 %/K, of 40 V -0.3 %/K: by arithmetic. V/K is read beside the new
    // voltage, in whatever order the two are named.
    catalog.edit(PartKind::panel, "own",
                 {{"beta_voc_pct_per_k", std::string("-120 mV/K")}, {"v_oc", 30.0}});
    CHECK(*panel_of(catalog, "own").beta_voc_pct_per_k == doctest::Approx(-0.4));
    catalog.edit(PartKind::panel, "own", {{"beta_voc_pct_per_k", {}}});
    CHECK(!panel_of(catalog, "own").beta_voc_pct_per_k);
}

TEST_CASE_FIXTURE(OneHand, "an edit of a part of the starter makes it one's own") {
    const std::string id = Catalog::starter().parts().panels.front().id;
    catalog.edit(PartKind::panel, id, {{"notes", std::string("mine")}});
    CHECK(catalog.is_own(PartKind::panel, id));
    CHECK(panel_of(catalog, id).notes == "mine");
}

TEST_CASE_FIXTURE(OneHand, "an edit that cannot be made is refused and changes nothing") {
    catalog.add(own_panel("my-own-panel"));
    const auto edit = [&](const std::string& id, const std::string& field,
                          const heatmatch::Value& value) {
        return [this, id, field, value] { catalog.edit(PartKind::panel, id, {{field, value}}); };
    };
    CHECK_THROWS_AS(edit("my-own-panle", "v_oc", 38.0)(), NotFound);
    CHECK(holds(refusal_of(edit("my-own-panle", "v_oc", 38.0)), "did you mean \"my-own-panel\""));
    CHECK_THROWS_AS(edit("my-own-panel", "voc", 38.0)(), InvalidInput);
    CHECK(holds(refusal_of(edit("my-own-panel", "voc", 38.0)), "did you mean \"v_oc\""));
    CHECK(holds(refusal_of(edit("my-own-panel", "v_oc", -1.0)), "must be > 0 V"));
    CHECK(holds(refusal_of(edit("my-own-panel", "v_oc", std::string("11 in"))), "is a length"));
    CHECK(holds(refusal_of(edit("my-own-panel", "v_mp", 38.0)), "below v_oc = 37.5 V"));
    CHECK(holds(refusal_of(edit("my-own-panel", "label", {})), "must be given"));
    CHECK(holds(refusal_of(edit("my-own-panel", "id", std::string("new"))), "id cannot be edited"));
    CHECK(catalog.history().size() == 1);
    Catalog starter = Catalog::starter();
    CHECK(holds(refusal_of([&] { starter.edit(PartKind::panel, "own", {}); }), "starter"));
}

TEST_CASE_FIXTURE(TwoHands,
                  "a stale part does not replace: the message says what it would take back") {
    catalog.add(own_panel("own"));
    const Panel read = panel_of(catalog, "own");
    other.edit(PartKind::panel, "own", {{"notes", std::string("weighed")}, {"v_oc", 38.0}});
    Panel changed = read;
    changed.i_sc = 9.0;
    for (const bool told : {true, false}) {
        CAPTURE(told);
        const auto replace = [&] {
            if (told) {
                catalog.replace(changed, read);
            } else {
                catalog.replace(changed);
            }
        };
        CHECK_THROWS_AS(replace(), CatalogError);
        const std::string said = refusal_of(replace);
        CHECK(
            holds(said, "is refused, nothing was changed: after it was read, another change set"));
        CHECK(holds(said, "v_oc from 37.5 V to 38 V"));
        CHECK(holds(said, "notes from unknown to"));
        CHECK(holds(said, "read the part again, or set single fields (edit)"));
    }
    CHECK(panel_of(other, "own").i_sc == 8.66);
    // What says the same as the other hand takes nothing back.
    changed.v_oc = 38.0;
    changed.notes = "weighed";
    catalog.replace(changed, read);
    CHECK(panel_of(other, "own").i_sc == 9.0);
}

TEST_CASE_FIXTURE(OneHand,
                  "a part that was read before one's own change is stale too, if it is told") {
    catalog.add(own_panel("own"));
    const Panel read = panel_of(catalog, "own");
    Panel first = read;
    first.v_oc = 38.0;
    catalog.replace(first, read);
    Panel second = read;
    second.i_sc = 9.0;
    CHECK(holds(refusal_of([&] { catalog.replace(second, read); }), "v_oc from 37.5 V to 38 V"));
    // Made from what was written, it is not.
    second = first;
    second.i_sc = 9.0;
    CHECK_NOTHROW(catalog.replace(second, first));
    // Without it the Catalog knows only that nobody else changed the part.
    CHECK_NOTHROW(catalog.replace(own_panel("own", 36.0)));
}

TEST_CASE_FIXTURE(TwoHands, "a part read after the other hand's change replaces it") {
    catalog.add(own_panel("own"));
    std::ignore = catalog.parts();
    other.edit(PartKind::panel, "own", {{"v_oc", 38.0}});
    Panel again = panel_of(catalog, "own");
    again.v_oc = 37.5;
    CHECK_NOTHROW(catalog.replace(again));
    // Removed since, there is nothing to replace.
    other.remove(PartKind::panel, "own");
    CHECK_THROWS_AS(catalog.replace(again), NotFound);
}

TEST_CASE_FIXTURE(OneHand, "an undo of a number takes back that change, and never twice") {
    catalog.add(own_panel("first"));
    catalog.add(own_panel("second"));
    CHECK(catalog.undo(1).undoes == 1);
    CHECK_FALSE(has_panel(catalog, "first"));
    CHECK(has_panel(catalog, "second"));
    CHECK_THROWS_AS(catalog.undo(1), CatalogError);
    CHECK(refusal_of([&] { catalog.undo(1); }) ==
          "entry 1 (add panel \"first\") was already undone, by entry 3; nothing was changed");
    CHECK(holds(refusal_of([&] { catalog.undo(3); }), "is itself an undo; nothing was changed"));
    CHECK(holds(refusal_of([&] { catalog.undo(9); }), "there is no entry 9 in the history"));
    CHECK(has_panel(catalog, "second"));
    CHECK(catalog.history().size() == 3);
}

TEST_CASE_FIXTURE(
    OneHand, "threads that share a catalog wait for each other, and closing ends them clearly") {
    catalog.add(own_panel("own"));
    std::atomic<int> kept{0};
    std::atomic<int> odd{0};
    const auto edit = [&](const std::string& field) {
        for (int n = 1; n <= 200; ++n) {
            try {
                catalog.edit(PartKind::panel, "own", {{field, 1.0 + 0.01 * n}});
                std::ignore = catalog.snapshot();
                ++kept;
            } catch (const heatmatch::Error& error) {
                if (std::string(error.what()) !=
                    "the catalog \"" + catalog.path() + "\" is closed; open it again") {
                    ++odd;
                }
                return;
            }
        }
    };
    std::vector<std::thread> threads;
    for (const char* field : {"price_high", "max_series_fuse_a", "area_m2"}) {
        threads.emplace_back(edit, field);
    }
    while (kept < 20 && odd == 0) std::this_thread::yield();
    catalog.close();
    for (std::thread& thread : threads) thread.join();
    CHECK(odd == 0);
    CHECK(static_cast<int>(Catalog::open(catalog.path()).history().size()) >= 1 + kept);
}

TEST_CASE_FIXTURE(OneHand, "after closing, every call says the same") {
    catalog.add(own_panel("own"));
    catalog.close();
    CHECK_NOTHROW(catalog.close());
    const std::string closed = "the catalog \"" + catalog.path() + "\" is closed; open it again";
    const std::string none = folder.file("none");
    CHECK(refusal_of([&] { std::ignore = catalog.parts(); }) == closed);
    CHECK(refusal_of([&] { std::ignore = catalog.history(); }) == closed);
    CHECK(refusal_of([&] { std::ignore = catalog.is_own(PartKind::panel, "own"); }) == closed);
    CHECK(refusal_of([&] { catalog.add(Panel{}); }) == closed);
    CHECK(refusal_of([&] { catalog.replace(Panel{}); }) == closed);
    CHECK(refusal_of([&] { catalog.edit(PartKind::panel, "own", {}); }) == closed);
    CHECK(refusal_of([&] { catalog.remove(PartKind::panel, "own"); }) == closed);
    CHECK(refusal_of([&] { catalog.undo(); }) == closed);
    CHECK(refusal_of([&] { catalog.save_copy(none); }) == closed);
    CHECK(refusal_of([&] { catalog.import_json(none); }) == closed);
    CHECK(refusal_of([&] { catalog.import_json_text("{", "x"); }) == closed);
    CHECK(refusal_of([&] { catalog.import_module_csv(none); }) == closed);
    CHECK(refusal_of([&] { std::ignore = catalog.export_json_text(); }) == closed);
    CHECK(refusal_of([&] { std::ignore = catalog.export_all_json_text(); }) == closed);
}
