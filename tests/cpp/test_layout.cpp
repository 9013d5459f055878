#include "dice.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/setting/layout.hpp"

using heatmatch::Layout;

namespace {

Layout read(const std::string& text) {
    return Layout::parse(text, "circuit", "panels");
}

std::string layout_error(const std::string& text) {
    try {
        static_cast<void>(read(text));
    } catch (const heatmatch::InvalidInput& error) {
        return error.what();
    }
    return "";
}

bool has(const std::string& text, const std::string& word) {
    return text.find(word) != std::string::npos;
}

}  // namespace

TEST_CASE("a layout is read as series within parallel, with repetitions and brackets") {
    const Layout two = read("barn pair x2 + porch four x4 | shed two");
    REQUIRE(two.strings.size() == 2);
    REQUIRE(two.strings[0].size() == 2);
    CHECK(two.strings[0][0].name == "barn pair");
    CHECK(two.strings[0][0].count == 2);
    CHECK(two.strings[0][1].count == 4);
    CHECK(two.strings[1][0].name == "shed two");
    CHECK(two.count() == 7);

    const Layout bank = read("[rod-a + rod-b | rod-c] x2 + rod-d");
    REQUIRE(bank.strings.size() == 1);
    CHECK(bank.strings[0][0].bracketed.front().strings.size() == 2);
    CHECK(bank.count() == 7);
}

TEST_CASE("text to layout to text is the identity, whatever the names hold") {
    for (const std::string text :
         {"a", "a x2", "a + a", "a | b", "a + b x3 | c", "[a | b] x2 + c", "[[a]]", "box", "\"x2\"",
          "\"a x2\" x3", "\"roof | east\" + \"12\\\" strip\"", "4x panel", "a x2b"}) {
        CAPTURE(text);
        CHECK(read(text).text() == text);
        CHECK(read(read(text).text()) == read(text));
    }
    CHECK(read("  a x1+b|[ c ]  x2 ").text() == "a + b | [c] x2");
}

TEST_CASE("names with signs are quoted, and read back letter for letter") {
    Dice dice(7);
    const std::string letters = "ab x2+|[]\"\\ 9";
    for (int i = 0; i < 2000; ++i) {
        std::string name;
        const int length = dice.from(1, 8);
        for (int k = 0; k < length; ++k) {
            name += dice.one_of(letters);
        }
        const Layout layout{.strings = {{{.name = name, .count = 2}}, {{.name = name}}}};
        CHECK(read(layout.text()) == layout);
    }
}

TEST_CASE("a text that is no layout is one error with the place") {
    CHECK(has(layout_error(""), "a name is missing (character 1)"));
    CHECK(has(layout_error("a + "), "a name is missing"));
    CHECK(has(layout_error("a || b"), "a name is missing (character 4)"));
    CHECK(has(layout_error("[a + b"), "a bracket is not closed"));
    CHECK(has(layout_error("a ]"), "join names by + in series"));
    CHECK(has(layout_error("\"a"), "a quotation mark is not closed"));
    CHECK(has(layout_error("\"\""), "a name is missing"));
    CHECK(has(layout_error("a x0"), "write x and a count up to 1000"));
    CHECK(has(layout_error("a x99999999999"), "write x and a count up to 1000"));
    CHECK(has(layout_error("[a] b"), "write x and a count"));
    CHECK(has(layout_error("a x1000 + b"), "more than 1000 parts"));
    CHECK(has(layout_error(std::string(40, '[')), "nested more than 20 deep"));
    CHECK(has(layout_error("a + "), "circuit: panels = \"a + \""));
}
