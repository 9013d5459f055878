// Well-formed UTF-8 as RFC 3629 section 4 gives it: no overlong form, no surrogate, nothing above
// U+10FFFF.
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/plain_text.hpp"

using namespace heatmatch;
using namespace std::string_view_literals;

TEST_CASE("words of any language are plain text") {
    for (const auto text :
         {""sv, "sand bed"sv, "two\nlines\r\n\tand a tab"sv, "15 Ω, 25 °C"sv, "m²"sv, "\x7e"sv}) {
        CAPTURE(text);
        CHECK(is_plain_text(text));
    }
}

TEST_CASE("the first and the last character of every length are plain text") {
    // RFC 3629 section 3, the table of ranges.
    for (const auto text :
         {"\xc2\xa0"sv, "\xdf\xbf"sv, "\xe0\xa0\x80"sv, "\xed\x9f\xbf"sv, "\xee\x80\x80"sv,
          "\xef\xbf\xbd"sv, "\xf0\x90\x80\x80"sv, "\xf4\x8f\xbf\xbf"sv}) {
        CAPTURE(plain_line(text));
        CHECK(is_plain_text(text));
    }
}

TEST_CASE("bytes that are not UTF-8 are not plain text") {
    const std::vector<std::string_view> broken{
        "\xff"sv,          // no such byte
        "\x80"sv,          // a continuation alone
        "\xc3"sv,          // cut short
        "\xe2\x82"sv,      // cut short
        "\xf0\x9f\x94"sv,  // cut short
        "\xc3("
        ""sv,                  // no continuation
        "\xc0\xaf"sv,          // overlong
        "\xe0\x9f\xbf"sv,      // overlong
        "\xf0\x8f\xbf\xbf"sv,  // overlong
        "\xed\xa0\x80"sv,      // a surrogate
        "\xf4\x90\x80\x80"sv,  // above U+10FFFF
        "\xf5\x80\x80\x80"sv,  // above U+10FFFF
    };
    for (const auto text : broken) {
        CHECK_FALSE(is_plain_text(text));
        CHECK_FALSE(is_plain_text("good " + std::string{text}));
        CHECK_FALSE(is_plain_text(std::string{text} + " good"));
        CHECK(is_plain_text(plain_line(text)));
    }
}

TEST_CASE("control characters are not plain text") {
    for (const auto text : {"\0"sv, "a\x01"sv, "\x1b[31m"sv, "\x7f"sv}) {
        CHECK_FALSE(is_plain_text(text));
        CHECK(is_plain_text(plain_line(text)));
    }
}

TEST_CASE("a line for a message keeps readable text") {
    CHECK(plain_line("15 Ω") == "15 Ω");
    CHECK(plain_line("15\n\xff"
                     "Ω") == "15\\x0a\\xffΩ");
    CHECK(plain_line("two\r\nlines").find_first_of("\r\n") == std::string::npos);
}

// Unicode 15, general categories Cc and Cf: controls of C0 and C1, separators, marks of direction.
TEST_CASE("invisible control characters are escaped") {
    CHECK(plain_line("\x1b[31mred") == "\\x1b[31mred");
    CHECK(plain_line("clear \u009b2J") == "clear \\x9b2J");
    CHECK(plain_line("back \u202e pair") == "back \\u202e pair");
    for (const auto mark : {"\u061c", "\u200e", "\u200f", "\u2028", "\u2066", "\u2069", "\ufeff"}) {
        CHECK(plain_line(mark).starts_with("\\u"));
    }
    CHECK(plain_line("גן é ☀️ 漢字") == "גן é ☀️ 漢字");
}
