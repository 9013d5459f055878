#include <string>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/cautions.hpp"

TEST_CASE("the cautions name the ways this work hurts people") {
    std::string all;
    for (const std::string_view sentence : heatmatch::cautions()) {
        CHECK(sentence.ends_with('.'));
        all += sentence;
    }
    for (const char* danger :
         {"kill", "arc", "weld", "coldest morning", "Bond", "earth fault", "ombustible", "limit",
          "steam", "Silica", "burn", "smoke alarm", "immersion", "Local codes"}) {
        CAPTURE(danger);
        CHECK(all.find(danger) != std::string::npos);
    }
}
