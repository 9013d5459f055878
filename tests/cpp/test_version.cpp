#include <regex>

#include <doctest/doctest.h>

#include "heatmatch/base/version.hpp"

TEST_CASE("the version is three numbers") {
    CHECK(std::regex_match(std::string(heatmatch::library_version()),
                           std::regex(R"(\d+\.\d+\.\d+)")));
}
