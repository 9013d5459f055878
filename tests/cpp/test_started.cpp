#include "demo.hpp"
#include "long_run.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/answer/started.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/match/rank/rank.hpp"
#include "heatmatch/text/installation_json.hpp"

using heatmatch::QuestionKind;
using heatmatch::start_installation;
using heatmatch::Started;
using heatmatch::TypedAnswer;
using heatmatch::understand;
using heatmatch::UnitSystem;

namespace {

using Typed = std::vector<TypedAnswer>;

const Typed& a_yard() {
    static const Typed answers{
        {QuestionKind::name, "north bench"},
        {QuestionKind::latitude, "44.1 N"},
        {QuestionKind::record_low, "-26 °F # in 2014, at the airport"},
        {QuestionKind::mounting, "60 deg, south"},
        {QuestionKind::sun, "?"},
        {QuestionKind::panels,
         "4 x 22.1 V 8.26 A 17.7 V 7.64 A, max 600 V, 11 years # labels of all four"},
        {QuestionKind::panels, "2 x silicon-60-cell-245"},
        {QuestionKind::elements, "2 x 1000 W 240 V storage rod"},
        {QuestionKind::spend, "$150"},
        {QuestionKind::store, "dry sand in a steel drum, 22.5 in x 33.5 in # 55 gallons"},
        {QuestionKind::place, "inside the greenhouse, on concrete"},
        {QuestionKind::wire, "30 ft"},
        {QuestionKind::space, "28 m2 twin-wall-8mm, 16 m3"},
        {QuestionKind::warmth, "5 °C, Nov to Mar"},
        {QuestionKind::damp, "yes"},
        {QuestionKind::metal, "no"},
        {QuestionKind::code, "nec"}};
    return answers;
}

std::string refusal(QuestionKind kind, const std::string& text, const Typed& earlier = {},
                    UnitSystem system = UnitSystem::si) {
    const auto read = understand(starter(), earlier, {kind, text}, system);
    return read.accepted ? "accepted" : read.said.text(system);
}

std::string read_as(QuestionKind kind, const std::string& text, const Typed& earlier = {},
                    UnitSystem system = UnitSystem::si) {
    const auto read = understand(starter(), earlier, {kind, text}, system);
    CAPTURE(text);
    CAPTURE(read.said.text());
    CHECK(read.accepted);
    return read.said.text(system);
}

}  // namespace

// Source: 22.5 in are 571.5 mm, 30 ft are 9.144 m, -26 °F are -32.2 °C.
TEST_CASE("answers make an installation that is read again and ranked as it is") {
    const Started started = start_installation(starter(), a_yard());
    const heatmatch::Installation& made = started.installation;
    CHECK(made.name == "north bench");
    CHECK(made.site.latitude_deg == 44.1);
    CHECK(made.site.record_low_c == doctest::Approx(-32.2).epsilon(0.001));
    CHECK(made.site.tilt_deg == 60.0);
    CHECK(made.site.azimuth_deg == 180.0);
    CHECK(made.site.wet == true);
    REQUIRE(made.panels.size() == 2);
    CHECK(made.panels[0].count == 4);
    CHECK(made.panels[0].age_years == 11.0);
    CHECK(made.panels[0].notes == "labels of all four");
    CHECK(find_panel(made.parts, made.panels[0].panel).v_mp == 17.7);
    CHECK(find_panel(made.parts, made.panels[0].panel).v_oc == 22.1);
    CHECK(find_panel(made.parts, made.panels[0].panel).max_system_voltage_v == 600.0);
    CHECK(made.panels[1].panel == "silicon-60-cell-245");
    REQUIRE(made.elements.size() == 2);
    CHECK(made.elements[0].element == "storage-rod-1000-240");
    CHECK(made.elements[0].count == 2);
    CHECK(made.elements[1].any.has_value());
    CHECK(made.goals.budget == 150.0);
    CHECK(made.goals.currency == "USD");
    CHECK(made.goals.months == std::vector<int>{11, 12, 1, 2, 3});
    REQUIRE(made.store);
    CHECK(made.store->medium == "dry-sand");
    CHECK(made.store->moist == false);
    CHECK(made.store->vessel == heatmatch::StoreMaterial::steel);
    CHECK(made.store->diameter_m == doctest::Approx(0.5715));
    CHECK(made.store->height_m == doctest::Approx(0.8509));
    CHECK(made.store->stands_on == heatmatch::StandsOn::concrete);
    CHECK(made.store->notes == "55 gallons");
    REQUIRE(made.runs.size() == 2);
    CHECK(made.runs[0].length_m == doctest::Approx(9.144));
    REQUIRE(made.space);
    CHECK(made.space->target_c == 5.0);
    REQUIRE(made.weather);
    CHECK(made.notes.find("in 2014, at the airport") != std::string::npos);
    CHECK(made.notes.find("typical sky") != std::string::npos);
    const auto again =
        heatmatch::installation_from_json(heatmatch::installation_to_json(made), "answers");
    CHECK(heatmatch::installation_to_json(again) == heatmatch::installation_to_json(made));
    CHECK(again.notes == made.notes);
    heatmatch::RankOptions options{.top = 3, .keep_rejected = 3};
    if (in_a_slow_build()) options.element = "storage-rod-1000-240";
    const auto ranking = heatmatch::rank(starter(), again, options);
    CHECK(ranking.by_season);
    CHECK(ranking.candidates.size() + ranking.rejected.size() > 0);
}

TEST_CASE("with every question open the installation can be ranked, and each assumption is told") {
    for (const char* open : {"", "?", "unknown", "don't know"}) {
        Typed answers;
        for (const auto& question : heatmatch::questions()) {
            answers.push_back({question.kind, open});
        }
        const Started started = start_installation(starter(), answers);
        CHECK(started.installation.site.record_low_c == -40.0);
        CHECK_FALSE(started.installation.weather);
        CHECK_FALSE(started.installation.store);
        CHECK(started.assumed.size() >= 10);
        for (const auto& assumed : started.assumed) {
            CHECK(started.installation.notes.find(assumed.text()) != std::string::npos);
        }
        const auto ranking =
            heatmatch::rank(starter(), started.installation, {.top = 3, .keep_rejected = 3});
        CHECK(ranking.evaluated > 0);
        CHECK_FALSE(ranking.recommended);
    }
    CHECK(start_installation(starter(), {}).installation.panels.size() == 1);
}

TEST_CASE("an answer that does not fit gets one sentence with what is allowed") {
    CHECK(refusal(QuestionKind::latitude, "144") ==
          "The latitude must be -90 deg to 90 deg, not 144 deg.");
    CHECK(refusal(QuestionKind::latitude, "Vermont") ==
          "\"Vermont\" holds no latitude: write it like 44.1.");
    CHECK(refusal(QuestionKind::record_low, "70 °C") ==
          "The temperature must be -70 °C to 40 °C, not 70 °C.");
    CHECK(refusal(QuestionKind::record_low, "cold") ==
          "\"cold\" holds no temperature: write it like -29 °C.");
    CHECK(refusal(QuestionKind::record_low, "-20 -30").find("more than one") != std::string::npos);
    CHECK(refusal(QuestionKind::record_low, "-20,5").find("two ways") != std::string::npos);
    CHECK(refusal(QuestionKind::mounting, "up").find("60 deg, south") != std::string::npos);
    CHECK(refusal(QuestionKind::mounting, "95 south").find("must be 0 deg to 90 deg") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::sun, "1 2 3") ==
          "There must be twelve numbers, not 3: January to December.");
    CHECK(refusal(QuestionKind::panels, "0 x 37.5 V 8.7 A").find("number of pieces") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::panels, "4 x 180 W").find("silicon-48-cell-180") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::panels, "4 x 30 V 8.7 A 37 V 8 A").find("must be above Vmp") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::panels, "4 x silicon-60-cel-245").find("silicon-60-cell-245") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::elements, "2 x storage rod").find("fits 3 elements") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::elements, "flux capacitor").find("has no element") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::spend, "nothing").find("name a sum") != std::string::npos);
    CHECK(refusal(QuestionKind::store, "a big one").find("sand in a steel drum") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::store, "sand 57 m x 85 m").find("length must be") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::space, "28 m2 glass").find("single-glass") != std::string::npos);
    CHECK(refusal(QuestionKind::damp, "perhaps").find("like yes") != std::string::npos);
    CHECK_THROWS_AS(
        static_cast<void>(start_installation(starter(), Typed{{QuestionKind::latitude, "144"}})),
        heatmatch::InvalidInput);
}

// Source: °F = 9/5 °C + 32; a foot is 0.3048 m.
TEST_CASE("a bare number is in the unit set of the reader, a stated unit in its own") {
    const auto us = UnitSystem::us;
    CHECK(read_as(QuestionKind::record_low, "-20", {}, us) == "Record low -20 °F (-28.9 °C).");
    CHECK(read_as(QuestionKind::record_low, "-20") == "Record low -20 °C (-4 °F).");
    CHECK(read_as(QuestionKind::record_low, "-4 °F") == "Record low -20 °C (-4 °F).");
    CHECK(read_as(QuestionKind::wire, "30", {}, us).find("30 ft") != std::string::npos);
    CHECK(read_as(QuestionKind::wire, "30").find("30 m") != std::string::npos);
    CHECK(refusal(QuestionKind::record_low, "200 °F", {}, us) ==
          "The temperature must be -94 °F to 104 °F, not 200 °F.");
    for (const auto& question : heatmatch::questions(us)) {
        CAPTURE(question.example);
        CHECK(understand(starter(), {}, {question.kind, question.example}, us).accepted);
        CHECK(question.ask.text().find('?') != std::string::npos);
    }
    for (const auto& question : heatmatch::questions()) {
        CHECK(understand(starter(), {}, {question.kind, question.example}).accepted);
    }
}

TEST_CASE("parts, directions and months are read in several ways of writing") {
    CHECK(read_as(QuestionKind::latitude, "35.5 S") == "Latitude 35.5 deg south.");
    CHECK(read_as(QuestionKind::mounting, "flat").find("0 deg from flat") != std::string::npos);
    CHECK(read_as(QuestionKind::mounting, "45 W").find("facing 270 deg") != std::string::npos);
    CHECK(read_as(QuestionKind::mounting, "45, 200").find("facing 200 deg") != std::string::npos);
    CHECK(read_as(QuestionKind::panels, "2 panels 245 W 60-cell").find("60-cell") !=
          std::string::npos);
    CHECK(read_as(QuestionKind::panels, "cdte-100").find("1 × CdTe") != std::string::npos);
    CHECK(read_as(QuestionKind::elements, "none").find("may be bought") != std::string::npos);
    CHECK(read_as(QuestionKind::elements, "oven lower 1200 W 230 V").find("oven-lower-1200-230") !=
          std::string::npos);
    CHECK(read_as(QuestionKind::elements, "3 x 700 W 115 V").find("not assessed") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::spend, "200 EUR").find("Write it in USD") != std::string::npos);
    CHECK(read_as(QuestionKind::spend, "200 USD").find("200 USD") != std::string::npos);
    CHECK(read_as(QuestionKind::spend, "nothing",
                  {{QuestionKind::elements, "2 x tubular-1000-120"}}) ==
          "Nothing is to be bought.");
    CHECK(read_as(QuestionKind::store, "200 L of water in a plastic drum")
              .find("vessel of polyethylene") != std::string::npos);
    CHECK(read_as(QuestionKind::store, "gravel 1 x 2 x 0.5 m").find("1 m by 2 m and 0.5 m high") !=
          std::string::npos);
    CHECK(read_as(QuestionKind::warmth, "October-April").find("Oct to Apr") != std::string::npos);
    CHECK(read_as(QuestionKind::damp, "no, dry").find("60 V") != std::string::npos);
}

TEST_CASE("groups of one answer are all kept, and words that are not understood are refused") {
    const Started two = start_installation(
        starter(), Typed{{QuestionKind::panels,
                          "3 x 37.5 V 8.7 A 30 V 8.1 A and 2 x 44 V 5.4 A, max 600 V, 12 years"},
                         {QuestionKind::elements, "2 x storage-rod-1000-240; 3 x 700 W 115 V"}});
    REQUIRE(two.installation.panels.size() == 2);
    CHECK(two.installation.panels[0].count == 3);
    CHECK(two.installation.panels[1].count == 2);
    CHECK(two.installation.panels[1].age_years == 12.0);
    REQUIRE(two.installation.elements.size() == 3);
    CHECK(two.installation.elements[1].count == 3);
    const std::string echo =
        read_as(QuestionKind::panels, "4 x 37.5 V 8.7 A 30.1 V 8.1 A, max 600 V");
    CHECK(echo.find("Vmp 30.1 V, Imp 8.1 A") != std::string::npos);
    CHECK(echo.find("600 V") != std::string::npos);
    CHECK(refusal(QuestionKind::panels, "4 x 37.5 V 8.7 A shiny").find("\"shiny\"") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::panels, "4 old silicon-60-cell-245").find("\"old\"") !=
          std::string::npos);
    CHECK(refusal(QuestionKind::elements, "2 x 700 W 115 V blue").find("blue") !=
          std::string::npos);
}

TEST_CASE("shop names find parts, and at most six are listed") {
    const std::string tanks = refusal(QuestionKind::elements, "4500 W 240 V water heater element");
    CHECK(tanks.find("immersion-4500-240") != std::string::npos);
    CHECK(tanks.find("immersion-low-density-4500-240") != std::string::npos);
    const std::string ovens = refusal(QuestionKind::panels, "oven element 2000 W");
    CHECK(ovens.find("catalog list panel") != std::string::npos);
    CHECK(ovens.size() < 500);
    CHECK(refusal(QuestionKind::space, "20 m2 polycarbonate").find("twin-wall-8mm") !=
          std::string::npos);
}

TEST_CASE(
    "facts without which nothing is recommended are named, and guessed air is at its hot end") {
    const Started started =
        start_installation(starter(), Typed{{QuestionKind::latitude, "47"},
                                            {QuestionKind::record_low, "-22"},
                                            {QuestionKind::panels, "4 x 37.5 V 8.7 A"},
                                            {QuestionKind::wire, "9 m"}});
    const std::string& notes = started.installation.notes;
    for (const char* fact :
         {"site.code", "runs[].surroundings.metal_raceway", "max_system_voltage_v"}) {
        CAPTURE(fact);
        CHECK(notes.find(fact) != std::string::npos);
    }
    CHECK_FALSE(started.installation.site.code);
    REQUIRE(started.installation.weather);
    CHECK(started.installation.weather->temp_max_c[6] > 30.0);
}
