#include "demo.hpp"
#include "dice.hpp"
#include "random_yard.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

using heatmatch::shown_margin_length;
using heatmatch::shown_margin_name;
using heatmatch::shown_margins;
using heatmatch::ShownMargin;

namespace {

bool is_known(std::string_view name) {
    const auto all = shown_margins();
    return std::any_of(all.begin(), all.end(),
                       [name](const ShownMargin& known) { return known.name == name; });
}

/// The sources of the margins as one text.
std::string source_of_margins() {
    std::string all;
    const auto root = std::filesystem::path(HEATMATCH_REFERENCE_DIR) / "../../libheatmatch/src";
    for (const char* room : {"match/margins", "match/rank"}) {
        for (const auto& entry : std::filesystem::directory_iterator(root / room)) {
            if (entry.path().extension() != ".cpp" || entry.path().filename() == "shown_margin.cpp")
                continue;
            std::ostringstream text;
            text << std::ifstream(entry.path()).rdbuf();
            all += text.str();
        }
    }
    return all;
}

/// Words of data that a reader of the trade does not use.
bool is_older_word(const std::string& shown) {
    static const std::regex older(
        "hot tail|survivor|hooked|fit in|acts in time|lagging|moist|dc |placing|independent|"
        "earth fault$");
    return std::regex_search(shown, older);
}

}  // namespace

TEST_CASE("every name of a margin has a shown name, and none is left over") {
    const std::string source = source_of_margins();
    const std::regex given("\\.name = \"([^\"]+)\"");
    std::set<std::string> names;
    for (std::sregex_iterator one(source.begin(), source.end(), given), end; one != end; ++one) {
        names.insert((*one)[1]);
    }
    CHECK(names.size() > 25);
    for (const std::string& name : names) {
        CAPTURE(name);
        CHECK(is_known(name));
    }
    for (const ShownMargin& known : shown_margins()) {
        CAPTURE(known.name);
        CHECK(source.find('"' + std::string(known.name) + '"') != std::string::npos);
    }
}

TEST_CASE("the margins of the demo and of random yards have shown names") {
    const auto check = [](const std::vector<heatmatch::Margin>& margins) {
        for (const heatmatch::Margin& margin : margins) {
            CAPTURE(margin.name);
            CHECK(is_known(margin.name));
        }
    };
    for (const auto& candidate : demo_ranking().candidates) check(candidate.margins());
    for (const auto& found : demo_ranking().reasons) {
        const std::string& reason = found.first;
        CAPTURE(reason);
        CHECK(is_known(reason));
    }
    Dice dice(20);
    for (int i = 0; i < 40; ++i) {
        check(assess(heatmatch::Parts{}, random_yard(dice)).margins());
    }
}

TEST_CASE("shown names are short, different and without older words") {
    std::set<std::string_view> different;
    for (const ShownMargin& known : shown_margins()) {
        CAPTURE(known.shown);
        CHECK(known.shown.size() <= shown_margin_length);
        CHECK(different.insert(known.shown).second);
        CHECK_FALSE(is_older_word(std::string(known.shown)));
    }
    CHECK(is_older_word("hot tail joint"));
}

TEST_CASE("a name that is not a margin's is shown letter for letter") {
    CHECK(shown_margin_name("hot tail insulation") == "element lead insulation");
    CHECK(shown_margin_name("of a later version") == "of a later version");
    CHECK(shown_margin_name("").empty());
}
