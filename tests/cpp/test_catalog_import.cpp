#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <filesystem>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::Catalog;
using heatmatch::CatalogError;
using heatmatch::Error;
using heatmatch::FileError;
using heatmatch::ImportReport;
using heatmatch::InvalidInput;
using heatmatch::Panel;
using heatmatch::PartKind;

namespace {

std::string panel_json(const std::string& id, const std::string& v_oc = "37.5") {
    return R"({"id": ")" + id + R"(", "label": "L", "v_oc": )" + v_oc +
           R"(, "i_sc": 8, "source": "label", "source_kind": "nameplate"})";
}

std::string wire_json(const std::string& id, const std::string& insulation) {
    return R"({"id": ")" + id + R"(", "label": "L", "conductor": "copper", "plating": "bare",
        "area_mm2": 4, "insulation": ")" +
           insulation + R"(", "source": "label", "source_kind": "nameplate"})";
}

std::string insulation_json(const std::string& id) {
    return R"({"id": ")" + id + R"(", "label": "L", "family": "PVC", "limit_c": 70,
        "source": "label", "source_kind": "nameplate"})";
}

std::string file_of(const std::string& members) {
    return "{\"heatmatch_catalog\": 1,\n" + members + "}";
}

}  // namespace

TEST_CASE("export, import into an empty file and export give the same bytes") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    CHECK(catalog.export_json_text() == "{\n  \"heatmatch_catalog\": 1\n}\n");
    Panel panel{.id = "own",
                .label = "S\u00fcd \"7\", 'x' \\ \u4e2d\U0001F600\n\t",
                .technology = heatmatch::Technology::cdte,
                .v_oc = 0.1 + 0.2,
                .i_sc = 1.0 / 3.0,
                .listed_fit = heatmatch::ListedFit{.light_current_a = 0.1,
                                                   .saturation_current_a = 1e-300,
                                                   .shunt_resistance_ohm = 1e9,
                                                   .modified_ideality_v = 1e-17},
                .provenance = by_label,
                .notes = std::string(19000, 'n')};
    catalog.add(panel);
    for (const double tiny : {5e-324, 2.2250738585072014e-308, 1e-22}) {
        panel.listed_fit->saturation_current_a = tiny;
        panel.id += "-x";
        catalog.add(panel);
    }
    catalog.add(heatmatch::Insulation{
        .id = "zz", .label = "Z", .family = "f", .limit_c = 99.95, .provenance = by_label});
    catalog.import_json_text(file_of("\"wires\": [" + wire_json("w", "zz") + "]"), "w.json");
    const heatmatch::Parts starter = Catalog::starter().parts();
    catalog.remove(PartKind::panel, starter.panels.front().id);
    catalog.remove(PartKind::element, starter.elements.front().id);
    catalog.remove(PartKind::cover, starter.covers.back().id);
    heatmatch::Medium medium = starter.media.front();
    medium.k20_w_mk *= 1.0000000000000002;
    catalog.replace(medium);

    const std::string path = folder.file("a.json");
    catalog.export_json(path);
    const std::string bytes = heatmatch::read_text_file(path);
    CHECK((bytes == catalog.export_json_text()));
    Catalog other = Catalog::open(folder.file("b.heatmatch"));
    const ImportReport report = other.import_json(path);
    CHECK(report.added == 6);
    CHECK(report.replaced == 1);
    CHECK(report.removed == 3);
    CHECK(report.refused.empty());
    CHECK((other.export_json_text() == bytes));
    CHECK((other.export_all_json_text() == catalog.export_all_json_text()));
    CHECK(heatmatch::find_panel(other.parts(), "own").label ==
          "S\u00fcd \"7\", 'x' \\ \u4e2d"
          "\U0001F600\n\t");
    CHECK(other.history().size() == 1);
    // Importing the same again changes nothing and leaves no entry.
    const ImportReport again = other.import_json(path);
    CHECK(again.unchanged == 10);
    CHECK(other.history().size() == 1);
}

TEST_CASE("rows equal to the starter's are not kept as one's own") {
    const TempFolder folder;
    const std::string all = Catalog::starter().export_all_json_text();
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const ImportReport report = catalog.import_json_text(all, "all.json");
    CHECK(report.refused.empty());
    CHECK(report.unchanged == static_cast<int>(heatmatch::list_parts(catalog.parts()).size()));
    CHECK(report.added + report.replaced == 0);
    CHECK(catalog.history().empty());
    CHECK((catalog.export_all_json_text() == all));
    // Nor where one is written by hand, or shows again what was removed.
    const heatmatch::Cover cover = catalog.parts().covers.front();
    catalog.replace(cover);
    CHECK_FALSE(catalog.is_own(heatmatch::PartKind::cover, cover.id));
    catalog.remove(heatmatch::PartKind::cover, cover.id);
    catalog.add(cover);
    CHECK_FALSE(catalog.is_own(heatmatch::PartKind::cover, cover.id));
    CHECK((catalog.export_all_json_text() == all));
}

TEST_CASE("an import adds all rows or none, and reports errors by line") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string before = catalog.export_all_json_text();
    const std::string text =
        file_of("\"panels\": [" + panel_json("good") + ",\n" + panel_json("bad", "-1") + ",\n" +
                panel_json("worse", "\"x\"") + ",\n" + panel_json("good") + "]");
    CHECK_THROWS_AS(catalog.import_json_text(text, "mine.json"), CatalogError);
    const std::string message = refusal_of([&] { catalog.import_json_text(text, "mine.json"); });
    CHECK(holds(message, "import of mine.json is refused, nothing was changed: 3 rows"));
    CHECK(holds(message, "mine.json, line 3: panel \"bad\": v_oc = -1 V"));
    CHECK(holds(message, "mine.json, line 4: panel \"worse\": v_oc = \"x\""));
    CHECK(holds(message, "mine.json, line 5: panel \"good\": id"));
    CHECK(holds(message, "keep the good rows only"));
    CHECK((catalog.export_all_json_text() == before));
    CHECK(catalog.history().empty());

    const ImportReport kept = catalog.import_json_text(text, "mine.json", true);
    CHECK(kept.added == 1);
    REQUIRE(kept.refused.size() == 3);
    CHECK(kept.refused[0].line == 3);
    CHECK(kept.refused[2].id == "good");
    CHECK(heatmatch::find_panel(catalog.parts(), "good").v_oc == 37.5);
    REQUIRE(catalog.history().size() == 1);
    CHECK(catalog.history()[0].action == "import mine.json");
}

TEST_CASE("a message about many bad rows is cut, the report is not") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    std::string rows;
    for (int n = 0; n < 500; ++n) {
        rows += (n == 0 ? "" : ",\n") + panel_json("p" + std::to_string(n), "-1");
    }
    const std::string text = file_of("\"panels\": [" + rows + "]");
    const std::string message = refusal_of([&] { catalog.import_json_text(text, "mine.json"); });
    CHECK(holds(message, "500 rows cannot be used"));
    CHECK(holds(message, "and 490 more"));
    CHECK(catalog.import_json_text(text, "mine.json", true).refused.size() == 500);
    CHECK(catalog.history().empty());
}

TEST_CASE("a row that names a missing part is refused with its line") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string text =
        file_of("\"insulations\": [" + insulation_json("known") + "],\n\"wires\": [" +
                wire_json("good", "known") + ",\n" + wire_json("bad", "no-such") + "]");
    const std::string message = refusal_of([&] { catalog.import_json_text(text, "mine.json"); });
    CHECK(holds(message, "wire \"bad\" (insulation names insulation \"no-such\")"));
    const ImportReport kept = catalog.import_json_text(text, "mine.json", true);
    CHECK(kept.added == 2);
    REQUIRE(kept.refused.size() == 1);
    CHECK(kept.refused[0].id == "bad");
    CHECK(kept.refused[0].line == 6);
}

TEST_CASE("refusing a row refuses those that name it") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string bad = R"({"id": "x", "label": "L", "family": "PVC", "limit_c": 5,
        "source": "label", "source_kind": "nameplate"})";
    const std::string text =
        file_of("\"insulations\": [" + bad + "], \"wires\": [" + wire_json("w", "x") + "]");
    const ImportReport kept = catalog.import_json_text(text, "mine.json", true);
    CHECK(kept.added == 0);
    CHECK(kept.refused.size() == 2);
    CHECK(catalog.history().empty());
}

TEST_CASE("an import may remove parts to which its own rows no longer refer") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    catalog.import_json_text(
        file_of("\"insulations\": [" + insulation_json("old") + "," + insulation_json("new") +
                "], \"wires\": [" + wire_json("w", "old") + "]"),
        "one.json");
    const std::string removal = R"("removed": {"insulations": ["old"]})";
    CHECK(holds(refusal_of([&] { catalog.import_json_text(file_of(removal), "two.json"); }),
                "wire \"w\" (insulation names insulation \"old\")"));
    catalog.import_json_text(file_of("\"wires\": [" + wire_json("w", "new") + "], " + removal),
                             "three.json");
    CHECK_FALSE(catalog.parts().find(PartKind::insulation, "old").has_value());
    CHECK(heatmatch::find_wire(catalog.parts(), "w").insulation == "new");
}

TEST_CASE("an id cannot be added and removed by one file") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string text =
        file_of("\"panels\": [" + panel_json("both") + R"(], "removed": {"panels": ["both"]})");
    CHECK(holds(refusal_of([&] { catalog.import_json_text(text, "mine.json"); }), "both"));
    CHECK(catalog.history().empty());
}

TEST_CASE("CSV text is imported as JSON is") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    const std::string text =
        "id,label,v_oc,i_sc,source,source_kind\n"
        "a,A,37.5 V,8,label,nameplate\n"
        "b,B,\"37,5\",8,label,nameplate\n";
    CHECK(holds(refusal_of([&] { catalog.import_csv_text(PartKind::panel, text, "mine.csv"); }),
                "mine.csv, line 3: panel \"b\": v_oc = \"37,5\""));
    CHECK(catalog.history().empty());
    const ImportReport kept = catalog.import_csv_text(PartKind::panel, text, "mine.csv", true);
    CHECK(kept.added == 1);
    CHECK(kept.refused.size() == 1);
    CHECK(heatmatch::find_panel(catalog.parts(), "a").v_oc == 37.5);
}

TEST_CASE("the module list is imported as one change that can be undone") {
    const TempFolder folder;
    const std::string path = folder.file("list.csv");
    const std::string tail =
        ",30.1,0.0058888,-0.130125,-0.461,46.4,1.65,1.58,8.67,3e-10,0.3,250,5\n";
    heatmatch::write_text_file(
        path,
        "Name,Technology,N_s,I_sc_ref,V_oc_ref,I_mp_ref,V_mp_ref,alpha_sc,beta_oc,gamma_r,T_NOCT,"
        "A_c,a_ref,I_L_ref,I_o_ref,R_s,R_sh_ref,Adjust\nUnits\n[0]\n"
        "One,Mono-c-Si,60,8.66,37.5,8.14" +
            tail + "Two,Multi-c-Si,60,8.66,37.5,8.70" + tail + "Three,CdTe,60,8.66,37.5,8.14" +
            tail + "Four,CIGS,60,8.66,37.5,8.14" + tail + "Five,HIT-Si,60,8.66,37.5,8.14" + tail);
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"));
    CHECK(
        holds(refusal_of([&] { catalog.import_module_csv(path); }), "i_mp = 8.7 A must be below"));
    const ImportReport kept = catalog.import_module_csv(path, true);
    CHECK(kept.added == 4);
    REQUIRE(kept.refused.size() == 1);
    CHECK(kept.refused[0].line == 5);
    REQUIRE(catalog.history().size() == 1);
    CHECK(catalog.history()[0].rows == 4);
    CHECK(heatmatch::find_panel(catalog.parts(), "five").technology ==
          heatmatch::Technology::heterojunction);
    catalog.undo();
    CHECK_FALSE(catalog.parts().find(PartKind::panel, "five").has_value());
    CHECK_THROWS_AS(catalog.import_module_csv(folder.file("none.csv")), FileError);
    CHECK_THROWS_AS(catalog.import_json(path), InvalidInput);
}
