#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

using heatmatch::near_names;
using heatmatch::suggestion;

namespace {

using NearNames = std::vector<std::string_view>;

constexpr auto volts_and_amperes =
    std::to_array<std::string_view>({"v_oc", "i_sc", "v_mp", "i_mp"});

/// Suggestions of the starter for an unknown element, medium or panel.
template <class Find>
std::string missing_in_starter(const Find& find) {
    try {
        static_cast<void>(find());
    } catch (const heatmatch::NotFound& error) {
        return error.what();
    }
    return "(found)";
}

std::string no_medium(std::string_view id) {
    return missing_in_starter([&] { return heatmatch::find_medium(starter(), id).id; });
}

std::string no_element(std::string_view id) {
    return missing_in_starter([&] { return heatmatch::find_element(starter(), id).id; });
}

}  // namespace

// Source: arithmetic, the fewest insertions, deletions and exchanges of one letter: at most two,
// and at most a quarter of the letters.
TEST_CASE("names are near within two letters and a quarter of all") {
    CHECK(near_names("voc", volts_and_amperes) == NearNames{"v_oc"});
    CHECK(near_names("v_mpp", volts_and_amperes) == NearNames{"v_mp"});
    CHECK(near_names("imp", volts_and_amperes) == NearNames{"i_mp"});
    CHECK(near_names("", volts_and_amperes).empty());
    CHECK(near_names("v_oc", {}).empty());
    CHECK(near_names(std::string(1000000, 'x'), volts_and_amperes).empty());
    constexpr auto places = std::to_array<std::string_view>({"porch", "torch", "porches"});
    CHECK(near_names("borch", places) ==
          NearNames{"porch", "torch"});  // two letters of seven are many
    constexpr auto rods = std::to_array<std::string_view>({"rod-1200", "rod-1100", "rod-1000"});
    CHECK(near_names("rod-1000x", rods) == NearNames{"rod-1000", "rod-1200", "rod-1100"});
    constexpr auto sands = std::to_array<std::string_view>({"sand-with-steel-turnings"});
    CHECK(near_names("sand", sands).empty());
}

TEST_CASE("all near names are given, else those that share a word, else all where they are few") {
    CHECK(suggestion("v_op", volts_and_amperes).text() == "did you mean \"v_oc\" or \"v_mp\"?");
    constexpr auto keys = std::to_array<std::string_view>({"record_low_c", "tilt_deg", "wet"});
    CHECK(suggestion("recordlow", keys).text() == "choices: record_low_c");
    CHECK(suggestion("tilt", keys).text() == "choices: tilt_deg");
    CHECK(suggestion("snow", keys).text() == "choices: record_low_c, tilt_deg, wet");
    CHECK(suggestion("snow", std::span<const std::string_view>{}).empty());
    CHECK(heatmatch::suggestion_of_likely("snow", keys).text() == "write one of them");
    CHECK(heatmatch::suggestion_of_likely("tilt", keys).text() == "choices: tilt_deg");
}

TEST_CASE("an unknown medium is answered with its family, never with one of another conductivity") {
    const std::string sand = no_medium("sand");
    CHECK_FALSE(contains(sand, "did you mean"));
    for (const char* id : {"dry-sand", "damp-sand", "saturated-sand", "sand-with-steel-turnings"}) {
        CHECK(contains(sand, id));
    }
    CHECK_FALSE(contains(sand, "steel-shot"));
    CHECK(contains(no_medium("dry-snad"), "did you mean \"dry-sand\"?"));
    CHECK(contains(no_medium("gravel"), "choices: dry-gravel"));
    const std::string fish = no_medium("fish");
    for (const char* form : {"families: ", "granular", "solid", "liquid"}) {
        CHECK(contains(fish, form));
    }
    CHECK_FALSE(contains(fish, "dry-sand"));
}

TEST_CASE("an unknown element is answered with its family, or with all families") {
    const std::string grill = no_element("grill");
    CHECK(contains(grill, "choices: oven-grill-2500-230"));
    CHECK_FALSE(contains(grill, "rod"));
    const std::string none = no_element("xyz");
    for (const char* family : {"families: ", "low-voltage immersion", "oven bake", "lamp"}) {
        CHECK(contains(none, family));
    }
    CHECK_FALSE(contains(none, "oven-bake-2000-240"));
}

TEST_CASE("every id of the starter with one letter too many is suggested") {
    for (const heatmatch::Part& part : heatmatch::list_parts(starter())) {
        const std::string id = heatmatch::part_id(part);
        const std::array<std::string_view, 1> known{id};
        CAPTURE(id);
        CHECK(near_names(id + "x", known).size() == 1);
    }
}
