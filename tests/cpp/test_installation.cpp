#include "refusal.hpp"

#include <string>
#include <tuple>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/setting/installation.hpp"

using heatmatch::check_references;
using heatmatch::Error;
using heatmatch::find_group;
using heatmatch::Installation;
using heatmatch::InvalidInput;
using heatmatch::NotFound;
using heatmatch::Parts;

namespace {

Parts known_parts() {
    Parts parts;
    parts.put(heatmatch::Panel{.id = "silicon-60"});
    parts.put(heatmatch::Element{.id = "rod-1000"});
    parts.put(heatmatch::Wire{.id = "pv-12"});
    parts.put(heatmatch::Connector{.id = "plug"});
    parts.put(heatmatch::Control{.id = "isolator"});
    parts.put(heatmatch::Medium{.id = "sand"});
    parts.put(heatmatch::Cover{.id = "glass"});
    return parts;
}

Installation bench() {
    Installation made;
    made.panels = {{.group = "barn pair", .panel = "silicon-60", .count = 2}};
    made.elements = {{.element = "rod-1000", .count = 2},
                     {.any = heatmatch::ElementFilter{.family = {"oven lower"}}, .count = 4}};
    made.store = heatmatch::Store{.medium = "sand", .shape = heatmatch::StoreShape::cylinder};
    made.runs = {{.name = "home run", .length_m = 9.0, .wire = "choose", .connector = "plug"},
                 {.name = "hot tail",
                  .carries = heatmatch::Carried::bank,
                  .length_m = 0.3,
                  .wire = "pv-12"}};
    made.devices = {{.part = "isolator",
                     .run = "home run",
                     .duty = heatmatch::Duty::breaks_dc,
                     .poles_used = 2},
                    {.part = "isolator", .duty = heatmatch::Duty::senses_only}};
    made.space = heatmatch::Space{.covers = {{.cover = "glass", .area_m2 = 28.0}}};
    made.circuit = heatmatch::ExistingCircuit{
        .group = "barn pair", .panels = "2S1P", .element = "rod-1000", .bank = "1S2P"};
    return made;
}

template <class Change>
std::string reference_refusal(Change change) {
    Installation changed = bench();
    change(changed);
    return refusal_of([&] { check_references(changed, known_parts()); });
}

}  // namespace

TEST_CASE("an installation whose names are all known is accepted") {
    CHECK(reference_refusal([](Installation&) {}) == "(accepted)");
    CHECK_NOTHROW(check_references(Installation{}, Parts{}));
}

TEST_CASE(
    "every reference of an installation is checked, and near names or the choices are "
    "named") {
    CHECK(holds(reference_refusal([](Installation& i) { i.panels[0].panel = "silicon-6"; }),
                "no panel \"silicon-6\" in the catalog; did you mean \"silicon-60\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.elements[0].element = "rod"; }),
                "no element \"rod\" in the catalog; choices: rod-1000"));
    CHECK(holds(reference_refusal([](Installation& i) { i.runs[1].wire = "pv-10"; }),
                "did you mean \"pv-12\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.runs[0].connector = "plog"; }),
                "did you mean \"plug\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.devices[0].part = "isolater"; }),
                "did you mean \"isolator\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.store->medium = "sands"; }),
                "did you mean \"sand\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.space->covers[0].cover = "glas"; }),
                "did you mean \"glass\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.circuit->element = "rod-100"; }),
                "did you mean \"rod-1000\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.circuit->group = "barn"; }),
                "no group of panels \"barn\" in the installation; choices: barn pair"));
}

TEST_CASE("a device sits in a run of the installation") {
    CHECK(holds(reference_refusal([](Installation& i) { i.devices[0].run = "home rum"; }),
                "device \"isolator\": run = \"home rum\" must be the name of a run of the "
                "installation; did you mean \"home run\"?"));
    CHECK(holds(reference_refusal([](Installation& i) { i.runs.clear(); }),
                "describe the run under"));
}

TEST_CASE("a group's name is given once, and so is a run's") {
    CHECK(holds(reference_refusal([](Installation& i) { i.panels.push_back(i.panels[0]); }),
                "installation: panels.group = \"barn pair\" must be given to one group only"));
    // Devices name their run: two of one name would leave open which is meant.
    CHECK(holds(reference_refusal([](Installation& i) { i.runs.push_back(i.runs[0]); }),
                "\"home run\""));
}

TEST_CASE("a wire to be chosen is not a reference") {
    CHECK(bench().runs[0].chooses());
    CHECK_FALSE(bench().runs[1].chooses());
    // Elements that may be bought name families, not ids.
    CHECK(reference_refusal([](Installation& i) {
              i.elements[1].any->family = {"no such family"};
          }) == "(accepted)");
}

TEST_CASE("inline parts take precedence over those of the catalog") {
    Installation installation = bench();
    installation.parts.put(heatmatch::Panel{.id = "silicon-60", .v_oc = 37.5});
    installation.parts.put(heatmatch::Panel{.id = "own", .v_oc = 20.0});
    const Parts merged = heatmatch::merged_parts(known_parts(), installation);
    CHECK(merged.panels.size() == 2);
    CHECK(heatmatch::find_panel(merged, "silicon-60").v_oc == 37.5);
    CHECK(heatmatch::find_panel(merged, "own").v_oc == 20.0);
    CHECK(merged.elements.size() == 1);
    installation.panels[0].panel = "own";
    CHECK_NOTHROW(check_references(installation, merged));
}

TEST_CASE("a group of panels is found by its name") {
    CHECK(find_group(bench(), "barn pair").count == 2);
    CHECK_THROWS_WITH_AS(std::ignore = find_group(Installation{}, "barn"),
                         "no group of panels \"barn\" in the installation; the installation lists "
                         "no panels",
                         NotFound);
}

TEST_CASE("a record low above the coldest month is a lost minus sign") {
    heatmatch::MonthlyNormals normals{.temp_min_c = std::vector<double>(12, 5.0)};
    normals.temp_min_c[1] = -9.0;
    heatmatch::Site site{.record_low_c = -9.0};
    CHECK_NOTHROW(check_record_low(site, normals));
    site.record_low_c = 24.0;
    CHECK_THROWS_WITH_AS(
        check_record_low(site, normals),
        "site: record_low_c = 24 °C must be <= the coldest temp_min_c = -9 °C; check the minus "
        "sign: the record low is the lowest temperature ever, and determines the cold voltage",
        InvalidInput);
}

TEST_CASE("the coldest month decides wherever it is in the year") {
    for (const std::size_t coldest : {0U, 6U, 11U}) {
        CAPTURE(coldest);
        heatmatch::MonthlyNormals normals{.temp_min_c = std::vector<double>(12, 5.0)};
        normals.temp_min_c[coldest] = -9.0;
        const auto refused_at = [&normals](double record_low_c) {
            const heatmatch::Site site{.record_low_c = record_low_c};
            return refusal_of<InvalidInput>([&] { check_record_low(site, normals); });
        };
        CHECK(refused_at(-30.0) == "(accepted)");
        CHECK(refused_at(-9.0) == "(accepted)");
        CHECK(holds(refused_at(-8.9), "record_low_c = -8.9 °C must be <= the coldest"));
        CHECK(holds(refused_at(9.0), "the coldest temp_min_c = -9 °C"));  // its minus sign lost
    }
}

// Source: the ranges that the glossary prints of these fields.
TEST_CASE("permitted elements, and their spacing, have both ends of their range") {
    struct Row {
        std::span<const heatmatch::Field> fields;
        const char* name;
        const char* text;
        double read;
        double low;
        double high;
    };
    const auto filter = heatmatch::element_filter_fields();
    const auto store = heatmatch::store_fields();
    for (const Row& row : {Row{filter, "price_max", "40", 40.0, 0.0, 1e6},
                           Row{filter, "rated_v_min", "0.12 kV", 120.0, 0.0, 1000.0},
                           Row{filter, "rated_w_max", "1.5 kW", 1500.0, 0.0, 50000.0},
                           Row{store, "element_spacing_mm", "9 cm", 90.0, 1.0, 5000.0},
                           Row{store, "spreader_diameter_mm", "6 cm", 60.0, 3.0, 300.0}}) {
        CAPTURE(std::string(row.name));
        const heatmatch::Field* field = heatmatch::find_field(row.fields, row.name);
        REQUIRE(field != nullptr);
        CHECK(read_quantity(*field, row.text, "bench") == doctest::Approx(row.read));
        CHECK(field->range.holds(row.low));
        CHECK(field->range.holds(row.high));
        CHECK_FALSE(field->range.holds(row.low - 0.01));
        CHECK_FALSE(field->range.holds(row.high * 1.0001));
    }
    heatmatch::ElementFilter chosen;
    const auto set = [&chosen, &filter](const char* name, double value) {
        set_field(filter, &chosen, name, value, "any");
    };
    set("price_max", 40.0);
    set("rated_v_min", 120.0);
    set("rated_w_max", 1500.0);
    CHECK(chosen.price_max == 40.0);
    CHECK(chosen.rated_v_min == 120.0);
    CHECK(chosen.rated_w_max == 1500.0);
    heatmatch::Store spaced;
    set_field(store, &spaced, "element_spacing_mm", 90.0, "store");
    set_field(store, &spaced, "spreader_diameter_mm", 60.0, "store");
    CHECK(spaced.element_spacing_mm == 90.0);
    CHECK(spaced.spreader_diameter_mm == 60.0);
}

TEST_CASE("twelve months are required, each with its low below its high") {
    heatmatch::MonthlyNormals normals{.sun_hours = std::vector<double>(12, 4.0),
                                      .temp_min_c = std::vector<double>(12, -5.0),
                                      .temp_max_c = std::vector<double>(12, 5.0)};
    CHECK_NOTHROW(check_monthly_normals(normals));
    normals.temp_min_c[6] = 6.0;
    CHECK_THROWS_WITH_AS(
        check_monthly_normals(normals),
        "weather: temp_min_c[6] = 6 °C must be <= temp_max_c = 5 °C; exchange the two",
        InvalidInput);
    normals.temp_min_c[6] = 5.0;
    CHECK_NOTHROW(check_monthly_normals(normals));
    normals.sun_hours.pop_back();
    CHECK_THROWS_WITH_AS(check_monthly_normals(normals),
                         "weather: sun_hours = 11 values must be 12 values, January first; give "
                         "one for each month",
                         InvalidInput);
}

TEST_CASE("a site's lists by month have twelve values or none") {
    heatmatch::Site site{.record_low_c = -20.0};
    CHECK_NOTHROW(heatmatch::check_site(site));
    site.snow_cover_pct.assign(12, 10.0);
    site.albedo_by_month.assign(12, 0.2);
    site.soiling_pct.assign(12, 2.0);
    site.linke_turbidity.assign(12, 3.0);
    CHECK_NOTHROW(heatmatch::check_site(site));
    for (auto* list :
         {&site.snow_cover_pct, &site.albedo_by_month, &site.soiling_pct, &site.linke_turbidity}) {
        list->pop_back();
        CHECK_THROWS_AS(heatmatch::check_site(site), InvalidInput);
        list->push_back(1.0);
    }
    site.soiling_pct = {1.0};
    CHECK_THROWS_WITH_AS(heatmatch::check_site(site),
                         "site: soiling_pct = 1 values must be 12 values, January first; give one "
                         "for each month",
                         InvalidInput);
}

TEST_CASE("surroundings are made by their names") {
    CHECK(heatmatch::Surroundings::open_air(25.0).kind == heatmatch::SurroundingsKind::open_air);
    CHECK(heatmatch::Surroundings::sunlit(35.0).irradiance_w_m2 == 1000.0);
    CHECK(heatmatch::Surroundings::conduit(30.0).kind == heatmatch::SurroundingsKind::conduit);
    for (const auto& made :
         {heatmatch::Surroundings::open_air(25.0), heatmatch::Surroundings::sunlit(35.0, 1200.0),
          heatmatch::Surroundings::conduit(30.0)}) {
        CHECK_NOTHROW(check_record(heatmatch::surroundings_fields(), &made, "surroundings"));
    }
}
