#include "refusal.hpp"

#include <string>
#include <tuple>
#include <variant>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/part_json.hpp"

using heatmatch::catalog_from_json;
using heatmatch::CatalogText;
using heatmatch::InvalidInput;
using heatmatch::Panel;
using heatmatch::Part;
using heatmatch::part_from_json;
using heatmatch::part_to_json;
using heatmatch::PartKind;
using heatmatch::RefusedRow;

namespace {

/// A panel in JSON with only the required fields, and others added.
std::string panel_with(const std::string& members) {
    return R"({"id": "barn", "label": "Barn", "v_oc": 37.5, "i_sc": 8,)" + members +
           R"("source": "label", "source_kind": "nameplate"})";
}

Panel read_panel(const std::string& members) {
    return std::get<Panel>(part_from_json(PartKind::panel, panel_with(members)));
}

std::string catalog_refusal(const std::string& text) {
    return refusal_of<InvalidInput>([&] { std::ignore = catalog_from_json(text, "mine.json"); });
}

}  // namespace

// Source: arithmetic on the definitions of the units; a gauge by ASTM B258.
TEST_CASE("a value is a number, or a text with its unit") {
    const Panel panel = read_panel(R"("v_mp": "30100 mV", "i_mp": "7.5 A", "noct_c": "115 °F",
        "beta_voc_pct_per_k": "-120 mV/K", "alpha_isc_pct_per_k": "4 mA/K",
        "gamma_pmp_pct_per_k": "-0.45 %/°C", "area_m2": "17.5 ft2",)");
    CHECK(panel.v_mp == 30.1);
    CHECK(panel.i_mp == 7.5);
    CHECK(panel.noct_c == 46.1111111111);
    CHECK(panel.beta_voc_pct_per_k == -0.32);
    CHECK(panel.alpha_isc_pct_per_k == 0.05);
    CHECK(panel.gamma_pmp_pct_per_k == -0.45);
    CHECK(panel.area_m2 == 1.6258032);
    const auto element = std::get<heatmatch::Element>(part_from_json(
        PartKind::element, R"({"id": "rod", "label": "Rod", "family": "tubular", "rated_v": 240,
        "rated_w": "1.5 kW", "heated_length_mm": "11 in", "terminal_limit_c": "392 °F",
        "source": "label", "source_kind": "nameplate"})"));
    CHECK(element.rated_w == 1500.0);
    CHECK(element.heated_length_mm == 279.4);
    CHECK(element.terminal_limit_c == 200.0);
    const auto wire = std::get<heatmatch::Wire>(
        part_from_json(PartKind::wire, R"({"id": "tail", "label": "Tail", "conductor": "copper",
        "plating": "bare", "area_mm2": "14 AWG", "resistance_ohm_per_km": "2.525 ohm/kft",
        "insulation": "silicone", "source": "label", "source_kind": "nameplate"})"));
    CHECK(wire.area_mm2 == doctest::Approx(2.0808).epsilon(1e-4));
    CHECK(wire.resistance_ohm_per_km == doctest::Approx(8.28412).epsilon(1e-6));
}

// Source: arithmetic, -1.5 W/K over 30 V times 7.5 A is -0.6667 %/K.
TEST_CASE("a coefficient of power relates to watts, and needs them") {
    CHECK(read_panel(R"("v_mp": 30, "i_mp": 7.5, "gamma_pmp_pct_per_k": "-1.5 W/K",)")
              .gamma_pmp_pct_per_k == -0.666666666667);
    CHECK(
        holds(refusal_of<InvalidInput>([] { read_panel(R"("gamma_pmp_pct_per_k": "-1.5 W/K",)"); }),
              "or give v_mp*i_mp as well"));
    // Fields may be in any order in the file.
    CHECK(read_panel(R"("gamma_pmp_pct_per_k": "-1.5 W/K", "i_mp": 7.5, "v_mp": 30,)")
              .gamma_pmp_pct_per_k == -0.666666666667);
}

TEST_CASE("a part survives its JSON to the last bit") {
    Panel panel = read_panel("");
    panel.label = "Süd \"7\"\n\t\\ \u4e2d\U0001F600";
    panel.v_oc = 0.1 + 0.2;
    panel.alpha_isc_pct_per_k = 1.0 / 3.0;
    panel.price = {.low = 0.1, .high = 1e6, .currency = "EUR"};
    panel.provenance.source_of = {{"v_oc", "meter"}, {"i_sc", "shunt, \"good\""}};
    panel.listed_fit = heatmatch::ListedFit{.light_current_a = 8.01,
                                            .saturation_current_a = 1e-300,
                                            .series_resistance_ohm = 0.0,
                                            .shunt_resistance_ohm = 1e9,
                                            .modified_ideality_v = 1.6,
                                            .adjust_pct = -3.25};
    for (const double current : {1e-300, 5e-324, 2.2250738585072014e-308, 0.1}) {
        panel.listed_fit->saturation_current_a = current;
        for (const int indent : {-1, 2}) {
            const std::string once = part_to_json(panel, indent);
            const Part back = part_from_json(PartKind::panel, once);
            CHECK(back == Part{panel});
            CHECK(part_to_json(back, indent) == once);
        }
    }
}

TEST_CASE("unknown values are omitted") {
    const std::string text = part_to_json(read_panel(""));
    CHECK(text.find("v_mp") == std::string::npos);
    CHECK(text.find("null") == std::string::npos);
    CHECK(text.find("\"v_oc\": 37.5") != std::string::npos);
    CHECK(text.find("\"i_sc\": 8,") != std::string::npos);
    CHECK_FALSE(read_panel(R"("v_mp": null, "notes": null, "listed_fit": null,)").v_mp.has_value());
}

TEST_CASE("an unknown key is refused with the nearest one") {
    const std::string message = refusal_of<InvalidInput>([] { read_panel(R"("voc": 37.5,)"); });
    CHECK(holds(message, "panel \"barn\": voc must be a known field"));
    CHECK(holds(message, "did you mean \"v_oc\"?"));
    CHECK(holds(
        refusal_of<InvalidInput>([] { read_panel(R"("listed_fit": {"light_current": 8},)"); }),
        "did you mean \"light_current_a\"?"));
}

TEST_CASE("a value of a wrong type is refused with its text") {
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("v_mp": true,)"); }),
                "v_mp = true must be a number"));
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("v_mp": [30],)"); }), "v_mp = [30]"));
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("notes": 7,)"); }),
                "notes = 7 must be a text"));
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("source_of": {"v_oc": 1},)"); }),
                "object of texts"));
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("listed_fit": 3,)"); }),
                "must be an object"));
    CHECK(
        holds(refusal_of<InvalidInput>([] { std::ignore = part_from_json(PartKind::panel, "[]"); }),
              "panel: value = [] must be an object"));
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("v_mp": "15 ohm",)"); }),
                "\"ohm\" is a resistance"));
}

TEST_CASE("broken JSON is reported with line and column") {
    const std::string message = refusal_of<InvalidInput>([] {
        std::ignore = part_from_json(PartKind::panel, "{\n  \"id\": \"a\",\n  \"v_oc\" 3\n}");
    });
    CHECK(holds(message, "line 3, column"));
    CHECK(holds(message, "correct the JSON"));
    CHECK(holds(catalog_refusal(""), "line 1, column 1"));
    CHECK(holds(catalog_refusal("{} {}"), "line 1"));
}

TEST_CASE("a number that no double can represent is reported with its place") {
    const std::string message = refusal_of<InvalidInput>([] { read_panel("\n\"v_mp\": 1e400,"); });
    CHECK(holds(message, "1e400"));
    CHECK(holds(message, "line 2"));
}

TEST_CASE("a key that is given twice is refused, and so is deep nesting") {
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel("\"v_mp\": 30,\n\"v_mp\": 31,"); }),
                "a second value at line 2 must be given once"));
    CHECK(holds(catalog_refusal(std::string(10000, '[')), "32 levels"));
    const std::string ladder(10000, '{');
    CHECK_FALSE(catalog_refusal(ladder) == "(accepted)");
}

TEST_CASE("thousands of keys are refused at once, naming a few") {
    std::string many;
    for (int i = 0; i < 200000; ++i) many += "\"k" + std::to_string(i) + "\": 1,";
    const std::string told = refusal_of<InvalidInput>([&] { read_panel(many); });
    CHECK(holds(told, "keys of one object at line 1 = more than 1000, such as \"i_sc\""));
    CHECK(told.size() < 300);
}

TEST_CASE("a catalog file reports the line of an unusable row") {
    const std::string text = "{\"heatmatch_catalog\": 1,\n\"panels\": [\n" + panel_with("") +
                             ",\n" + R"({"id": "bad", "label": "Bad", "v_oc": -1, "i_sc": 8,)" +
                             R"("source": "x", "source_kind": "nameplate"})" + "\n,\n7]}";
    CHECK(holds(catalog_refusal(text), "mine.json, line 4: panel \"bad\": v_oc = -1 V"));
    std::vector<RefusedRow> refused;
    const CatalogText kept = catalog_from_json(text, "mine.json", &refused);
    CHECK(kept.rows.size() == 1);
    REQUIRE(refused.size() == 2);
    CHECK(refused[0].line == 4);
    CHECK(refused[0].id == "bad");
    CHECK(holds(refused[0].reason, "v_oc = -1 V"));
    // A row that is no object at all has a line as well.
    CHECK(holds(refused[1].reason, "must be an object"));
    CHECK(refused[1].line == 6);
}

TEST_CASE("an id is unique among the rows of its kind") {
    const std::string row = panel_with("");
    CHECK(holds(
        catalog_refusal("{\"heatmatch_catalog\": 1, \"panels\": [" + row + ",\n" + row + "]}"),
        "line 2: panel \"barn\": id = "));
    CHECK(holds(catalog_refusal("{\"heatmatch_catalog\": 1, \"panels\": [" + row +
                                "], \"panel\": [" + row + "]}"),
                "in the plural; did you mean \"panels\"?"));
}

TEST_CASE("the removed rows are a list of ids") {
    const auto removing = [](const std::string& list) {
        return R"({"heatmatch_catalog": 1, "removed": {"panels": )" + list + "}}";
    };
    const CatalogText read = catalog_from_json(removing(R"(["a", "b"])"), "mine.json");
    CHECK(read.removed.size() == 2);
    for (const std::string wrong : {"[5]", "[null]", "[\"\"]", "[[\"a\"]]", "\"a\"", "[\"A b\"]"}) {
        CAPTURE(wrong);
        CHECK(holds(catalog_refusal(removing(wrong)), "removed"));
    }
}

TEST_CASE("only version one of a catalog file is read") {
    CHECK(holds(catalog_refusal(R"({"panels": []})"), "is this a catalog file of heatmatch?"));
    for (const std::string version : {"0", "2", "1.0", "\"1\"", "null", "4294967297"}) {
        CAPTURE(version);
        CHECK(holds(catalog_refusal("{\"heatmatch_catalog\": " + version + "}"), "newer"));
    }
    CHECK(holds(catalog_refusal(R"({"heatmatch_catalog": 1, "pannels": []})"), "\"panels\"?"));
}

// Source: RFC 3629: stray and cut bytes, overlong forms, surrogates and what lies above U+10FFFF.
TEST_CASE("texts that are not UTF-8 are refused anywhere") {
    const std::vector<std::string> malformed{"\xFF",
                                             "\xC3",
                                             "\x80",
                                             "S\xFC\x64",
                                             "\xC0\xAF",
                                             "\xE0\x80\x80",
                                             "\xED\xA0\x80",
                                             "\xF0\x80\x80\x80",
                                             "\xF4\x90\x80\x80",
                                             "\xF5\x80\x80\x80"};
    for (std::size_t n = 0; n < malformed.size(); ++n) {
        CAPTURE(n);
        const std::string& bytes = malformed[n];
        CHECK_FALSE(refusal_of<InvalidInput>(
                        [&] { read_panel("\"notes\": \"" + bytes + "\","); }) == "(accepted)");
        Panel panel = read_panel("");
        panel.notes = bytes;
        CHECK_FALSE(refusal_of<InvalidInput>([&] { check_part(panel); }) == "(accepted)");
        panel.notes.clear();
        panel.provenance.source_of = {{"v_oc", bytes}};
        CHECK_FALSE(refusal_of<InvalidInput>([&] { check_part(panel); }) == "(accepted)");
        panel.provenance.source_of = {{bytes, "meter"}};
        CHECK_FALSE(refusal_of<InvalidInput>([&] { check_part(panel); }) == "(accepted)");
    }
    for (const std::string good :
         {"Süd", "\u4e2d", "\U0001F600", "\U0010FFFF", "\uFFFD", "a\tb\n"}) {
        Panel panel = read_panel("");
        panel.notes = good;
        CHECK(refusal_of<InvalidInput>([&] { check_part(panel); }) == "(accepted)");
    }
}

TEST_CASE("the source of a field is refused for an unknown field") {
    CHECK(holds(refusal_of<InvalidInput>([] { read_panel(R"("source_of": {"voc": "meter"},)"); }),
                "\"v_oc\""));
}
