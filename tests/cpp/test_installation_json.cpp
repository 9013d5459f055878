#include "refusal.hpp"

#include <string>
#include <tuple>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::Installation;
using heatmatch::installation_from_json;
using heatmatch::installation_to_json;
using heatmatch::InvalidInput;

namespace {

std::string demo_text() {
    return heatmatch::read_text_file(std::string(HEATMATCH_NOTEBOOK_DATA_DIR) +
                                     "/demo_installation.json");
}

/// An installation with only the required fields, and others added.
std::string least_with(const std::string& members) {
    return R"({"heatmatch_installation": 1, "site": {"record_low_c": -20})" +
           (members.empty() ? "" : ", " + members) + "}";
}

std::string installation_refusal(const std::string& text) {
    return refusal_of<InvalidInput>(
        [&] { std::ignore = installation_from_json(text, "bench.json"); });
}

}  // namespace

TEST_CASE("the bundled demo is read, and everything it names is in the starter") {
    CHECK(demo_text() == std::string(heatmatch::demo_installation_json()));
    const Installation demo = installation_from_json(demo_text());
    CHECK(demo.site.record_low_c == -32.0);
    CHECK(demo.site.wet.value_or(false));
    REQUIRE(demo.weather.has_value());
    CHECK(demo.weather->sun_hours[11] == 2.0);
    REQUIRE(demo.panels.size() == 3);
    REQUIRE(demo.panels[0].measured.has_value());
    CHECK(demo.panels[0].measured->irradiance_w_m2 == 815.0);
    REQUIRE(demo.elements.size() == 3);
    REQUIRE(demo.elements[2].any.has_value());
    CHECK(demo.elements[2].any->price_max == 60.0);
    REQUIRE(demo.runs.size() == 3);
    CHECK(demo.runs[0].surroundings.kind == heatmatch::SurroundingsKind::sunlit);
    REQUIRE_FALSE(demo.devices.empty());
    CHECK(demo.devices.front().run == "home run");
    CHECK(demo.devices.back().run.empty());
    REQUIRE(demo.space.has_value());
    CHECK(demo.space->covers[0].area_m2 == 28.0);
    CHECK(demo.goals.months == std::vector<int>{11, 12, 1, 2, 3});
    REQUIRE(demo.circuit.has_value());
    CHECK(demo.circuit->panels == "2S1P");
    const heatmatch::Parts starter = heatmatch::Catalog::starter().parts();
    CHECK_NOTHROW(check_references(demo, merged_parts(starter, demo)));
}

TEST_CASE("writing an installation that was read and reading it again gives the same bytes") {
    const Installation demo = installation_from_json(demo_text());
    const std::string once = installation_to_json(demo);
    CHECK(installation_to_json(installation_from_json(once)) == once);
    CHECK(once.back() == '\n');
    const Installation least = installation_from_json(least_with(""));
    const std::string written = installation_to_json(least);
    CHECK(installation_to_json(installation_from_json(written)) == written);
}

TEST_CASE("values survive to the last bit, and texts to the last letter") {
    Installation installation;
    installation.name = "Glashaus \"Süd\"\n\t2 \u4e2d";
    installation.site.record_low_c = -20.1;
    installation.site.latitude_deg = 1.0 / 3.0;
    installation.site.snow_cover_pct = std::vector<double>(12, 100.0 / 3.0);
    installation.site.albedo_by_month = {0.7, 0.7, 0.5, 0.2, 0.2, 0.2,
                                         0.2, 0.2, 0.2, 0.2, 0.3, 0.1 + 0.2};
    installation.panels = {{.group = "p", .panel = "a", .count = 3, .age_years = 0.1 + 0.2}};
    installation.runs = {{.name = "r", .length_m = 1e-300, .wire = "choose"}};
    const Installation back = installation_from_json(installation_to_json(installation));
    CHECK(back.name == installation.name);
    CHECK(back.site == installation.site);
    CHECK(back.panels == installation.panels);
    CHECK(back.runs == installation.runs);
}

TEST_CASE("the least an installation needs is a record low") {
    const Installation least = installation_from_json(least_with(""));
    CHECK(least.site.record_low_c == -20.0);
    CHECK(least.panels.empty());
    CHECK_FALSE(least.store.has_value());
    CHECK_FALSE(least.circuit.has_value());
    const std::string message =
        installation_refusal(R"({"heatmatch_installation": 1, "site": {}})");
    CHECK(holds(message, "bench.json: site: record_low_c = (missing) must be given"));
    CHECK(
        holds(installation_refusal(R"({"heatmatch_installation": 1})"), "{\"record_low_c\": -20}"));
}

TEST_CASE("a site's list by month is refused by its own name") {
    const auto with_site = [](const std::string& member) {
        return installation_refusal(
            R"({"heatmatch_installation": 1, "site": {"record_low_c": -20, )" + member + "}}");
    };
    CHECK(holds(with_site(R"("snow_cover_pct": [10, 20])"), "snow_cover_pct = 2 values"));
    CHECK(holds(with_site(R"("soiling_pct": [1,1,1,1,1,1,1,1,1,1,1,91])"), "soiling_pct"));
    CHECK(holds(with_site(R"("albedo_by_month": [1,1,1,1,1,1,1,1,1,1,1,1.5])"), ">= 0 and <= 1"));
    CHECK(holds(with_site(R"("linke_turbidity": 3)"), "linke_turbidity"));
}

TEST_CASE("an unknown written as null is omitted") {
    const Installation read = installation_from_json(
        least_with(R"("name": null, "weather": null, "store": null, "space": null,
                      "circuit": null, "panels": null, "runs": null, "goals": {"months": null},
                      "elements": [{"element": "rod", "any": null}])"));
    CHECK(read.elements[0].element == "rod");
    CHECK_FALSE(read.store.has_value());
    CHECK(
        installation_refusal(least_with(R"("runs": [{"name": "r", "carries": "array", "length_m": 1,
                                          "wire": "choose", "surroundings": null}])")) ==
        "(accepted)");
    CHECK(installation_refusal(least_with(R"("space": {"covers": null})")) == "(accepted)");
}

TEST_CASE("null for a field with a default keeps the default") {
    const std::string text =
        R"({"heatmatch_installation": 1,
            "site": {"record_low_c": -20, "wet": null, "bright_irradiance_w_m2": null},
            "elements": [{"element": "rod", "count": null}],
            "devices": [{"part": "x", "duty": "carries dc", "poles_used": null}]})";
    REQUIRE(installation_refusal(text) == "(accepted)");
    const Installation read = installation_from_json(text);
    CHECK(read.site.bright_irradiance_w_m2 == 1000.0);
    CHECK(read.elements[0].count == 1);
    CHECK(read.devices[0].poles_used == 1);
}

// Source: arithmetic on the definitions of the units.
TEST_CASE("numbers of an installation may carry units") {
    const Installation read = installation_from_json(
        R"({"heatmatch_installation": 1,
            "site": {"record_low_c": "-40 °F", "elevation_m": "1000 ft"},
            "panels": [{"group": "p", "panel": "a", "age_years": "14 years",
                        "measured": {"v_oc": "33600 mV", "irradiance_w_m2": "0.8 kW/m2",
                                     "cell_temperature_c": "122 °F"}}],
            "store": {"medium": "sand", "shape": "cylinder", "diameter_m": "40 cm",
                      "element_spacing_mm": "4 in", "charge_hours": "90 min"},
            "runs": [{"name": "r", "carries": "array", "length_m": "30 ft", "wire": "choose"}]})");
    CHECK(read.site.record_low_c == -40.0);
    CHECK(read.site.elevation_m == 304.8);
    CHECK(read.panels[0].age_years == 14.0);
    REQUIRE(read.panels[0].measured.has_value());
    CHECK(read.panels[0].measured->v_oc == 33.6);
    CHECK(read.panels[0].measured->irradiance_w_m2 == 800.0);
    CHECK(read.panels[0].measured->cell_temperature_c == 50.0);
    CHECK(read.store->diameter_m == 0.4);
    CHECK(read.store->element_spacing_mm == 101.6);
    CHECK(read.store->charge_hours == 1.5);
    CHECK(read.runs[0].length_m == 9.144);
}

TEST_CASE("a message names the place in the list, with its name") {
    CHECK(holds(installation_refusal(least_with(R"("panels": [{"group": "a", "panel": "x"},
                                                 {"group": "barn", "panel": "x", "count": 0}])")),
                "bench.json: panels[1] \"barn\": count = 0 must be >= 1 and <= 64"));
    CHECK(holds(installation_refusal(least_with(R"("runs": [{"name": "tail", "carries": "array",
                                                "length_m": -3, "wire": "choose"}])")),
                "bench.json: runs[0] \"tail\": length_m = -3 m must be >= 0 m"));
    CHECK(holds(installation_refusal(
                    least_with(R"("space": {"covers": [{"cover": "glass", "area_m2": 0}]})")),
                "bench.json: space covers[0] \"glass\": area_m2 = 0 m2"));
}

TEST_CASE("an element is owned or may be bought, one of the two") {
    CHECK(holds(installation_refusal(least_with(R"("elements": [{"count": 2}])")),
                "or `any` instead"));
    CHECK(holds(installation_refusal(least_with(R"("elements": [{"element": "rod", "any": {}}])")),
                "given together with `any`"));
    CHECK(installation_refusal(least_with(R"("elements": [{"any": {}}])")) == "(accepted)");
}

TEST_CASE("parts given inline are checked as those of a catalog") {
    const std::string panel = R"({"id": "own", "label": "Own", "v_oc": 37.5, "i_sc": 8.66,
                                  "beta_voc_pct_per_k": "-120 mV/K", "source": "label",
                                  "source_kind": "nameplate"})";
    const Installation read =
        installation_from_json(least_with(R"("parts": {"panels": [)" + panel + "]}"));
    REQUIRE(read.parts.panels.size() == 1);
    // Source: arithmetic, -0.12 V/K over 37.5 V.
    CHECK(read.parts.panels[0].beta_voc_pct_per_k == -0.32);
    const std::string once = installation_to_json(read);
    CHECK(installation_to_json(installation_from_json(once)) == once);
    CHECK(holds(
        installation_refusal(least_with(R"("parts": {"panels": [)" + panel + "," + panel + "]}")),
        "must be unique among panels"));
    CHECK(holds(installation_refusal(least_with(R"("parts": {"panels": [)" + panel +
                                                R"(], "panel": [)" + panel + "]}")),
                "unique"));
    CHECK(holds(installation_refusal(least_with(R"("parts": {"panles": []})")),
                "choices: panel, element, "));
}

TEST_CASE("only version one is read") {
    for (const std::string version : {"0", "2", "1.5", "\"1\"", "true", "null", "4294967297",
                                      "18446744073709551615", "-1", "[1]"}) {
        CAPTURE(version);
        CHECK(holds(installation_refusal(R"({"heatmatch_installation": )" + version +
                                         R"(, "site": {"record_low_c": -20}})"),
                    "heatmatch_installation"));
    }
    CHECK(holds(installation_refusal(R"({"site": {"record_low_c": -20}})"),
                "heatmatch_installation = (missing) must be 1"));
}
