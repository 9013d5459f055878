#include "demo.hpp"

#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/answer/spared_wire.hpp"
#include "heatmatch/answer/wires_table.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"

using heatmatch::rank;

TEST_CASE("a ranking tells what the strongest pairing left out would do to a wire") {
    const auto ranking = rank(starter(), demo(), {.top = 5, .keep_rejected = 2000});
    REQUIRE(ranking.reasons.contains("hot tail insulation"));
    const auto told = heatmatch::spared_wires(ranking);
    REQUIRE(told.size() == 2);
    CHECK(told[0].text().find("pairings are left out") != std::string::npos);
    CHECK(told[1].text().find(" °C") != std::string::npos);
    CHECK(told[1].text(heatmatch::UnitSystem::us).find(" °F") != std::string::npos);
    heatmatch::Installation bare = small();
    bare.runs.clear();
    bare.devices.clear();
    const auto none = heatmatch::spared_wires(rank(starter(), bare, {.top = 3}));
    REQUIRE(none.size() == 1);
    CHECK(none[0].text() == "No pairing of the ranking is left out because of a wire.");
}

// Source: arithmetic, the middle of the catalog's price per metre times the length there and back.
TEST_CASE("a suitable wire has the price of its run") {
    heatmatch::Installation hot = demo();
    hot.runs.front().wire = "pvc-105-14-awg";
    const auto candidate = heatmatch::assess(starter(), hot);
    const auto checks = heatmatch::check_wires(candidate, &starter());
    bool found = false;
    const auto lines = heatmatch::wire_lines(checks, &candidate.circuit);
    for (std::size_t i = 0; i < checks.size(); ++i) {
        if (!checks[i].sufficient_wire) continue;
        const auto per_m = checks[i].sufficient_wire->price.typical();
        if (!per_m) continue;
        found = true;
        const double whole = std::round(2.0 * candidate.circuit.runs[i].run.length_m * *per_m);
        const std::string said = lines[i].remedies.front().text();
        CAPTURE(said);
        CHECK(said.find("about " + std::to_string(static_cast<int>(whole)) + " USD") !=
              std::string::npos);
    }
    CHECK(found);
}
