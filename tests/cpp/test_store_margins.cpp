#include <set>

#include <doctest/doctest.h>

#include "heatmatch/match/store_margins.hpp"

using heatmatch::Margin;
using heatmatch::Severity;

// The model of the bed is not part of this version: none of these may ever look good.
TEST_CASE("every margin of the store is listed and not assessed") {
    heatmatch::Circuit circuit;
    circuit.bank.element.id = "some-rod";
    heatmatch::Installation installation;
    installation.store = heatmatch::Store{.medium = "dry-sand", .shape = "cylinder"};
    std::set<std::string> names;
    for (const Margin& margin : heatmatch::store_margins(circuit, installation)) {
        names.insert(margin.name);
        CHECK(margin.severity == Severity::not_assessed);
        CHECK_FALSE(margin.headroom);
        CHECK_FALSE(margin.missing.empty());
        CHECK(margin.sentence().ends_with('.'));
    }
    CHECK(names == std::set<std::string>{"sheath temperature", "coil temperature", "end seal",
                                         "wall and lid", "touch temperature", "store ceiling",
                                         "stagnation", "dry-out"});
}
