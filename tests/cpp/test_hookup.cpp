#include <set>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/hookup.hpp"

using heatmatch::Hookup;
using heatmatch::hookups_up_to;
using heatmatch::parse_hookup;

TEST_CASE("a hook-up is printed as series and parallel") {
    CHECK(Hookup{.series = 2, .parallel = 1}.label() == "2S1P");
    CHECK(Hookup{.series = 1, .parallel = 12}.label() == "1S12P");
    CHECK(Hookup{.series = 3, .parallel = 4}.count() == 12);
}

// Source: Ohm's law.
TEST_CASE("resistance grows with series and falls with parallel") {
    CHECK(Hookup{.series = 2, .parallel = 1}.resistance_factor() == 2.0);
    CHECK(Hookup{.series = 1, .parallel = 2}.resistance_factor() == 0.5);
    CHECK(Hookup{.series = 2, .parallel = 2}.resistance_factor() == 1.0);
    CHECK(Hookup{.series = 3, .parallel = 2}.resistance_factor() == 1.5);
}

// Source: OEIS A006218, the sum of the numbers of divisors up to n.
TEST_CASE("all hook-ups up to a count are there, each once") {
    constexpr int counts[] = {0, 1, 3, 5, 8, 10, 14, 16, 20, 23, 27};
    for (int n = 0; n <= 10; ++n) {
        CAPTURE(n);
        const auto hookups = hookups_up_to(n);
        CHECK(static_cast<int>(hookups.size()) == counts[n]);
        std::set<std::string> labels;
        for (const Hookup& hookup : hookups) {
            CHECK(hookup.count() <= n);
            labels.insert(hookup.label());
        }
        CHECK(labels.size() == hookups.size());
    }
    CHECK(hookups_up_to(-3).empty());
}

TEST_CASE("hook-ups come by count, most in series first") {
    const auto hookups = hookups_up_to(4);
    std::string order;
    for (const Hookup& hookup : hookups) order += hookup.label() + ' ';
    CHECK(order == "1S1P 2S1P 1S2P 3S1P 1S3P 4S1P 2S2P 1S4P ");
}

TEST_CASE("a printed hook-up is read back") {
    for (const Hookup& hookup : hookups_up_to(60)) {
        CHECK(parse_hookup(hookup.label(), "circuit", "panels") == hookup);
    }
    CHECK(parse_hookup("1000S1000P", "circuit", "panels") ==
          Hookup{.series = 1000, .parallel = 1000});
}

TEST_CASE("texts that are not hook-ups are refused, naming part, field and value") {
    for (const char* text : {"",
                             "2x1",
                             "2S",
                             "S1P",
                             "0S1P",
                             "1S0P",
                             "-1S1P",
                             "+2S1P",
                             "2S1",
                             "2s1p",
                             "2S1P ",
                             " 2S1P",
                             "2S1P1",
                             "2P1S",
                             "2S-1P",
                             "2.5S1P",
                             "1001S1P",
                             "1S1001P",
                             "99999999999999999999S1P",
                             "1S99999999999999999999P",
                             "two in series",
                             "2S1PP",
                             "2SS1P"}) {
        CAPTURE(std::string(text));
        try {
            static_cast<void>(parse_hookup(text, "circuit", "bank"));
            FAIL("not refused");
        } catch (const heatmatch::InvalidInput& error) {
            CHECK(error.detail().part == "circuit");
            CHECK(error.detail().field == "bank");
            CHECK(error.detail().value == '"' + std::string(text) + '"');
            CHECK(std::string(error.what()).find("2S1P") != std::string::npos);
        }
    }
    // A long text is cut in the message.
    try {
        static_cast<void>(parse_hookup(std::string(5000, 'x'), "circuit", "bank"));
        FAIL("not refused");
    } catch (const heatmatch::InvalidInput& error) {
        CHECK(std::string(error.what()).size() < 300);
    }
}
