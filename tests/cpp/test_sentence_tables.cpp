#include <regex>
#include <set>

#include <doctest/doctest.h>

#include "heatmatch/answer/sentence_tables.hpp"

using namespace heatmatch;

TEST_CASE("every sentence has a unique id, and is found by it") {
    std::set<std::string_view> ids;
    for (const auto lines : sentence_tables()) {
        for (const Template& line : lines) {
            CAPTURE(line.id);
            CHECK(ids.insert(line.id).second);
            CHECK(find_template(line.id) == &line);
        }
    }
    CHECK(find_template("nowhere.nothing") == nullptr);
}

// A check that found nothing promises nothing: whatever promises is in no line of any room.
TEST_CASE("nothing is called safe, fine or according to a code") {
    static const std::regex promise(
        R"(\b(safe|safely|ok|okay|passed|compliant|compl(y|ies|iance)|approved|certified|legal)\b)",
        std::regex::icase);
    for (const auto lines : sentence_tables()) {
        for (const Template& line : lines) {
            CAPTURE(line.id);
            CHECK_FALSE(std::regex_search(std::string(line.text), promise));
        }
    }
}

TEST_CASE("no number is in a sentence except as an argument, and its places are closed") {
    static const std::regex digit(R"(\d)");
    static const std::regex place(R"(\{[a-z_]+(:[^{}]*)?\})");
    for (const auto lines : sentence_tables()) {
        for (const Template& line : lines) {
            const std::string plain =
                std::regex_replace(std::string(line.text), place, std::string());
            CAPTURE(line.id);
            CHECK_FALSE(std::regex_search(plain, digit));
            CHECK(plain.find_first_of("{}") == std::string::npos);
        }
    }
}
