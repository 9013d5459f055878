#include <string>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/cautions.hpp"

TEST_CASE("the cautions of a liquid concern liquids, and not sand") {
    std::string all;
    for (const heatmatch::Sentence& sentence : heatmatch::cautions(true)) all += sentence.text();
    for (const char* danger :
         {"kill", "weld", "bursts", "cover the element", "scald", "smoke alarm"}) {
        CAPTURE(danger);
        CHECK(all.find(danger) != std::string::npos);
    }
    for (const char* word : {"sand", "ilica"}) CHECK(all.find(word) == std::string::npos);
    CHECK(heatmatch::cautions(true).back() == heatmatch::cautions().back());
}

TEST_CASE("the cautions name the ways this work hurts people") {
    std::string all;
    for (const heatmatch::Sentence& sentence : heatmatch::cautions()) {
        CHECK(sentence.text().ends_with('.'));
        all += sentence.text();
    }
    CHECK(all.starts_with("DC above 60 V (30 V where wet) can kill, "));
    for (const char* danger :
         {"kill", "arc", "weld", "record low", "Bond", "ground fault", "ombustible", "limit",
          "steam", "Silica", "burn", "smoke alarm", "immersion", "Local codes"}) {
        CAPTURE(danger);
        CHECK(all.find(danger) != std::string::npos);
    }
}
