#include "temp_folder.hpp"

#include <filesystem>
#include <functional>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

#include <SQLiteCpp/Database.h>
#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::Catalog;
using heatmatch::Error;
using heatmatch::PartKind;

namespace {

/// One bad input, and the required parts of its message: part, field, value, range, remedy.
struct Bad {
    std::string what;
    std::function<void(Catalog&)> use;
    std::string pieces;  //!< with | between
};

using Use = std::function<void(Catalog&)>;

Use catalog_text(const std::string& text) {
    return [text](Catalog& catalog) { catalog.import_json_text(text, "mine.json"); };
}

/// A part of that kind, in a catalog file whose second line it is.
Use part(const std::string& plural, const std::string& members) {
    return catalog_text("{\"heatmatch_catalog\": 1, \"" + plural + "\": [\n{\"id\": \"own\", " +
                        "\"label\": \"Own\", \"source\": \"s\", \"source_kind\": \"derived\", " +
                        members + "}]}");
}

Use panel(const std::string& members) {
    return part("panels",
                "\"v_oc\": 37.5, \"i_sc\": 8.66" + (members.empty() ? "" : ", " + members));
}

Use csv(const std::string& text) {
    return [text](Catalog& catalog) { catalog.import_csv_text(PartKind::panel, text, "mine.csv"); };
}

/// The bundled demo with one of its texts exchanged, read and judged.
Use in_demo(const std::string& from, const std::string& to) {
    return [from, to](Catalog& catalog) {
        std::string text(heatmatch::demo_installation_json());
        const std::size_t at = text.find(from);
        REQUIRE_MESSAGE(at != std::string::npos, from);
        text.replace(at, from.size(), to);
        std::ignore = heatmatch::assess(catalog.parts(),
                                        heatmatch::installation_from_json(text, "bench.json"));
    };
}

std::string nested(std::size_t depth) {
    return std::string(depth, '[') + std::string(depth, ']');
}

bool is_utf8(const std::string& text) {
    std::size_t left = 0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (left > 0) {
            if ((byte & 0xC0U) != 0x80U) return false;
            --left;
        } else if (byte >= 0x80U) {
            if (byte < 0xC2U || byte > 0xF4U) return false;
            left = byte < 0xE0U ? 1 : byte < 0xF0U ? 2 : 3;
        }
    }
    return left == 0;
}

void check_refused(const Bad& bad, Catalog& catalog) {
    CAPTURE(bad.what);
    const std::string before = catalog.export_all_json_text();
    const std::size_t entries = catalog.history().size();
    try {
        bad.use(catalog);
        FAIL_CHECK("it was accepted");
    } catch (const Error& error) {
        const std::string message = error.what();
        CAPTURE(message);
        std::istringstream pieces(bad.pieces);
        for (std::string piece; std::getline(pieces, piece, '|');) {
            CAPTURE(piece);
            CHECK(message.find(piece) != std::string::npos);
        }
        CHECK(message.size() < 1000);
        CHECK(is_utf8(message));
    }
    CHECK((catalog.export_all_json_text() == before));
    CHECK(catalog.history().size() == entries);
}

void check_all(const std::vector<Bad>& all) {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("a.heatmatch"), 10);
    for (const Bad& bad : all) check_refused(bad, catalog);
}

const std::string element_members = R"("family": "tubular", )";
const std::string wire_members =
    R"("conductor": "copper", "plating": "bare", "insulation": "pvc-70")";

}  // namespace

TEST_CASE("numbers that cannot be are refused with part, field, value, range and remedy") {
    check_all({
        {"negative", panel(R"("v_mp": -3)"),
         R"(line 2|panel "own"|v_mp = -3 V|> 0 V and <= 2000 V|omit the field)"},
        {"zero", part("panels", R"("v_oc": 0, "i_sc": 8)"), "v_oc = 0 V|> 0 V|read Voc"},
        {"huge", panel(R"("v_mp": 1e300)"), "v_mp = 1e+300 V|<= 2000 V"},
        {"beyond a double", panel(R"("v_mp": 1e400)"), "mine.json|line 2|1e400"},
        {"beyond a double as text", panel(R"("v_mp": "1e400 V")"),
         R"(panel "own"|v_mp = "1e400 V"|a finite number)"},
        {"not a number", panel(R"("v_mp": NaN)"), "mine.json|line 2, column|invalid literal"},
        {"not a number as text", panel(R"("v_mp": "NaN")"), R"(v_mp = "NaN"|"15 V")"},
        {"infinite", panel(R"("v_mp": -Infinity)"), "mine.json|line 2, column"},
        {"comma", panel(R"("v_mp": "30,1")"),
         R"(panel "own"|v_mp = "30,1"|an unambiguous number|use a point for decimals)"},
        {"wrong unit", part("elements", element_members + R"("resistance_ohm": "15 V")"),
         R"(element "own"|resistance_ohm = "15 V"|a resistance|"V" is a voltage|write it in ohm)"},
        {"unknown unit", panel(R"("v_mp": "30 volz")"), R"(v_mp = "30 volz"|"volz")"},
        {"length for area", part("wires", wire_members + R"(, "area_mm2": "2 mm")"),
         R"(wire "own"|area_mm2 = "2 mm"|an area|write it in mm2)"},
        {"no such gauge", part("wires", wire_members + R"(, "area_mm2": "50 AWG")"),
         R"(area_mm2 = "50 AWG"|4/0 to 40 AWG|"14 AWG")"},
        {"half a cell", panel(R"("cells_in_series": 59.5)"),
         "cells_in_series = 59.5|a whole number"},
        {"half a pole", part("controls", R"("family": "x",
            "dc_ratings": [{"v_dc": 600, "a_dc": 25, "poles": 1.5}])"),
         "dc_ratings[0].poles = 1.5|a whole number"},
    });
}

TEST_CASE("labels that cannot be are refused with part, field, value, range and remedy") {
    check_all({
        {"alpha and beta exchanged",
         panel(R"("alpha_isc_pct_per_k": -0.347, "beta_voc_pct_per_k": 0.068)"),
         R"(panel "own"|alpha_isc_pct_per_k = -0.347 %/K|>= -0.2 %/K|alpha of i_sc (small)"},
        {"V/K given as %/K", panel(R"("beta_voc_pct_per_k": -0.13)"),
         R"(beta_voc_pct_per_k = -0.13 %/K|<= -0.14 %/K|"-120 mV/K")"},
        {"V/K given as %/K, though some label has as much",
         panel(R"("beta_voc_pct_per_k": -0.153)"),
         R"(beta_voc_pct_per_k = -0.153 %/K|<= -0.17 %/K unless technology is GaAs|"-120 mV/K")"},
        {"beta positive", panel(R"("beta_voc_pct_per_k": "0.34 %/K")"),
         "beta_voc_pct_per_k = 0.34 %/K|>= -0.9 %/K and <= -0.14 %/K|beta of v_oc (negative"},
        {"amperes for volts", panel(R"("beta_voc_pct_per_k": "-27 mA/K")"),
         R"(beta_voc_pct_per_k = "-27 mA/K"|a current per kelvin)"},
        {"Imp above Isc", panel(R"("i_mp": 8.7)"),
         R"(panel "own"|i_mp = 8.7 A|below i_sc = 8.66 A|exchanged)"},
        {"Vmp above Voc", panel(R"("v_mp": 38)"), "v_mp = 38 V|below v_oc = 37.5 V"},
        {"no ohms", part("elements", element_members + R"("rated_v": 240)"),
         R"(element "own"|measured_resistance_ohm = (missing)|rated_v and rated_w)"},
        {"ohms far from the rating",
         part("elements",
              element_members + R"("rated_v": 240, "rated_w": 1000, "resistance_ohm": 5.76)"),
         "resistance_ohm = 5.76 ohm|within 25% of rated_v² / rated_w = 57.6 ohm|measure"},
        {"dc on an ac part", part("controls", R"("family": "x", "ac_only": true,
            "dc_ratings": [{"v_dc": 24, "a_dc": 10, "poles": 1}])"),
         R"(control "own"|ac_only = yes|keep whichever the label prints)"},
        {"table not sorted", part("alloys", R"("resistance_factor":
            [{"t_c": 500, "factor": 1.1}, {"t_c": 20, "factor": 1}])"),
         R"(alloy "own"|resistance_factor|20 °C|sort the table by t_c)"},
        {"silver on nickel", part("wires", R"("conductor": "nickel", "plating": "silver",
            "insulation": "pvc-70", "area_mm2": 4)"),
         R"(wire "own"|plating|silver|bare for nickel)"},
        {"unknown insulation", part("wires", R"("conductor": "copper", "plating": "bare",
            "insulation": "pvc-71", "area_mm2": 4)"),
         R"(mine.json|wire "own"|insulation "pvc-71"|correct the name)"},
    });
}

TEST_CASE("catalog files that cannot be read are refused in one clear message") {
    const std::string row = R"({"id": "a", "label": "A", "v_oc": 37.5, "i_sc": 8, "source": "s",
        "source_kind": "derived"})";
    check_all({
        {"broken", catalog_text("{\"heatmatch_catalog\": 1,\n \"panels\": [}"),
         "mine.json|line 2, column 13|correct the JSON: remove the comma"},
        {"no comma", catalog_text("{\"heatmatch_catalog\": 1\n \"panels\": []}"),
         "mine.json|line 2|correct the JSON: a comma is missing before it"},
        {"a comma too many", catalog_text("{\"heatmatch_catalog\": 1,\n}"),
         "mine.json|line 2|correct the JSON: remove the comma before it"},
        {"open text", catalog_text("{\"heatmatch_catalog\": 1,\n \"panels: []}"),
         "mine.json|line 2|correct the JSON: close the text"},
        {"cut off", catalog_text("{\"heatmatch_catalog\": 1"),
         "mine.json|line 1|correct the JSON: the text ends"},
        {"curly quotes", catalog_text("{\n “heatmatch_catalog”: 1}"),
         "mine.json|line 2|correct the JSON: put names and texts between straight quotes"},
        {"empty", catalog_text(""), "mine.json|line 1|correct the JSON"},
        {"nested", catalog_text(nested(10000)), "mine.json|line 1|at most 32 levels"},
        {"nested inside", panel("\"notes\": " + nested(10000)), "line 2|at most 32 levels"},
        {"key twice", panel(R"("v_mp": 30, "v_mp": 31)"), "v_mp|line 2|remove one"},
        {"id twice",
         catalog_text("{\"heatmatch_catalog\": 1, \"panels\": [" + row + ",\n" + row + "]}"),
         R"(mine.json, line 3|panel "a"|id = |unique among panels|rename)"},
        {"unknown key", panel(R"("vmp": 30)"), R"(panel "own"|vmp|mean "v_mp"?)"},
        {"unknown kind", catalog_text(R"({"heatmatch_catalog": 1, "pannels": []})"),
         R"(mine.json|pannels|did you mean "panels"?)"},
        {"list at the top", catalog_text("[1]"), "mine.json|[1]|an object in braces"},
        {"object for a list", catalog_text(R"({"heatmatch_catalog": 1, "panels": {}})"),
         "mine.json: panels|{}|a list in brackets"},
        {"no version", catalog_text(R"({"panels": []})"), "heatmatch_catalog = (missing)|1"},
        {"newer", catalog_text(R"({"heatmatch_catalog": 2})"), "= 2|newer heatmatch"},
        {"text for a flag", part("controls", R"("family": "x", "polarised": "no")"),
         R"(control "own"|polarised = "no"|true or false)"},
        {"list for a number", panel(R"("v_mp": [30])"), "v_mp = [30]|a number"},
        {"number for a text", panel(R"("notes": 5)"), "notes = 5|a text"},
        {"no id", catalog_text(R"({"heatmatch_catalog": 1, "panels": [{"label": "A"}]})"),
         "line 1|panel|id = (missing)|unique within the kind"},
        {"no slug", catalog_text(R"({"heatmatch_catalog": 1, "panels": [{"id": "A b"}]})"),
         R"(id = "A b"|lowercase letters, digits|"my-part-2")"},
        {"unknown word", panel(R"("technology": "mono")"),
         R"(technology = "mono"|mono-Si, multi-Si|choices: mono-Si)"},
        {"half a record", panel(R"("listed_fit": {"light_current_a": 8})"),
         R"(panel "own"|listed_fit.saturation_current_a = (missing))"},
        {"endless text", panel("\"notes\": \"" + std::string(30000, 'n') + '"'),
         R"(panel "own"|notes = "nnn|20000 bytes|shorten)"},
        {"no UTF-8", panel("\"notes\": \"S\xFC\x64\""), "mine.json|line 2|UTF-8"},
        {"endless broken text", catalog_text('"' + std::string(100000, 'x')), "line 1"},
        {"unknown column", csv("id,label,voc\n"), R"(mine.csv|"voc"|mean "v_oc"?)"},
        {"open quote", csv("id,label,v_oc\na,\"A,1\n"), "mine.csv|line 2|a quote"},
        {"empty CSV", csv(""), "mine.csv|header = (missing)|begin with id,label"},
    });
}

TEST_CASE("installations that cannot be are refused with place, field, value, range and remedy") {
    check_all({
        {"month 13", in_demo("[11, 12, 1, 2, 3]", "[11, 12, 13]"),
         "bench.json: goals|months = 13|>= 1 and <= 12"},
        {"11 months of sun", in_demo("2.2, 2.0]", "2.2]"),
         "weather|sun_hours = 11 values|12 values|one for each month"},
        {"low above high", in_demo("[-13,", "[13,"), "temp_min_c[0] = 13 °C|temp_max_c = -3 °C"},
        {"no record low", in_demo("\"record_low_c\": -32,", ""),
         "bench.json: site|record_low_c = (missing)|given"},
        {"warm record low", in_demo("-32", "68"), "record_low_c = 68 °C|weather station"},
        {"latitude", in_demo("44.1", "441"), "site|latitude_deg = 441 deg|<= 90 deg"},
        {"count 0", in_demo("\"count\": 2,", "\"count\": 0,"),
         R"(panels[0] "barn pair"|count = 0|>= 1 and <= 64)"},
        {"hook-up", in_demo("2S1P", "2x1"), R"(circuit|panels = "2x1"|a hook-up such as 2S1P)"},
        {"too many panels", in_demo("2S1P", "3S2P"), "circuit|3S2P (6 panels)|at most the 2"},
        {"unknown panel", in_demo("silicon-60-cell-245", "silicon-60-cell-244"),
         R"(no panel "silicon-60-cell-244"|did you mean "silicon-60-cell-245")"},
        {"unknown group",
         in_demo("\"group\": \"barn pair\",\n    \"panels\"",
                 "\"group\": \"barn pear\",\n    \"panels\""),
         R"(no group of panels "barn pear"|did you mean "barn pair"?)"},
        {"unknown run", in_demo("\"run\": \"home run\"", "\"run\": \"home\""),
         R"(device "pv-isolator-2-pole"|run = "home"|choices: home run)"},
        {"unknown duty", in_demo("\"breaks dc\"", "\"breaks\""),
         R"(devices[0] "pv-isolator-2-pole"|duty = "breaks"|choices: breaks dc)"},
        {"length below zero", in_demo("\"length_m\": 9", "\"length_m\": -9"),
         R"(runs[0] "home run"|length_m = -9 m|>= 0 m and <= 1000 m)"},
        {"unknown surroundings", in_demo("\"conduit\"", "\"pipe\""),
         R"(runs[1] "along the wall" surroundings|kind = "pipe"|conduit)"},
        {"unknown key", in_demo("\"tilt_deg\"", "\"tilt\""), R"(site|tilt|choices: tilt_deg)"},
        {"no version", in_demo("\"heatmatch_installation\": 1,", ""),
         "bench.json|heatmatch_installation = (missing)|must be 1"},
    });
}

TEST_CASE("unusable files are refused by path, and the open catalog is unchanged") {
    const TempFolder folder;
    heatmatch::write_text_file(folder.file("text"), std::string(5000, 't'));
    SQLite::Database(folder.file("other"), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
        .exec("CREATE TABLE t (x)");
    std::ignore = Catalog::open(folder.file("newer"));
    SQLite::Database(folder.file("newer"), SQLite::OPEN_READWRITE).exec("PRAGMA user_version = 99");
    const auto open = [&folder](const std::string& name) -> Use {
        return [path = folder.file(name)](Catalog&) { std::ignore = Catalog::open(path, 10); };
    };
    const auto import = [&folder](const std::string& name) -> Use {
        return [path = folder.file(name)](Catalog& catalog) { catalog.import_json(path); };
    };
    check_all({
        {"text", open("text"), folder.file("text") + "|not a heatmatch catalog|restore a copy"},
        {"another", open("other"), folder.file("other") + "|not a heatmatch catalog|name"},
        {"newer", open("newer"), folder.file("newer") + "|schema 99|update heatmatch"},
        {"folder", open(""), folder.file("") + "|it is a folder|name a file in it"},
        {"no folder", open("no/a"), folder.file("no/a") + "|check that the folder exists"},
        {"import of nothing", import("none"), folder.file("none") + "|No such file|check"},
        {"import of a folder", import(""), folder.file("") + "|it is a folder; name a file"},
        {"import of a database", import("newer"), folder.file("newer") + "|line 1"},
    });
}
