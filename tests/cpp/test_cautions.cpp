#include <string>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/cautions.hpp"

TEST_CASE("the cautions name the ways this work hurts people") {
    std::string all;
    for (const heatmatch::Sentence& sentence : heatmatch::cautions()) {
        CHECK(sentence.text().ends_with('.'));
        all += sentence.text();
    }
    CHECK(all.starts_with("Direct current above 60 V (30 V where wet) can kill, "));
    for (const char* danger :
         {"kill", "arc", "weld", "coldest morning", "Bond", "earth fault", "ombustible", "limit",
          "steam", "Silica", "burn", "smoke alarm", "immersion", "Local codes"}) {
        CAPTURE(danger);
        CHECK(all.find(danger) != std::string::npos);
    }
}
