#include "demo.hpp"

#include <algorithm>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/plan/unlocks.hpp"

using heatmatch::Installation;
using heatmatch::Plan;
using heatmatch::Unlock;

namespace {

/// Four thin-film panels whose strings may not be fed by two others without fuses of their own.
Installation thin_film_yard() {
    Installation yard = demo();
    yard.circuit.reset();
    yard.panels = {{.group = "thin", .panel = "cdte-72", .count = 6, .rear_blocked = true}};
    yard.elements = {{.element = "storage-rod-1000-240", .count = 4}};
    yard.goals.circuits_max = 1;
    yard.goals.volts_max = 200.0;
    yard.goals.budget = 500.0;
    return yard;
}

const Plan& thin_film_plan() {
    static const Plan plan = heatmatch::plan(starter(), thin_film_yard());
    return plan;
}

const std::vector<Unlock>& thin_film_unlocks() {
    static const std::vector<Unlock> found =
        heatmatch::unlocks(starter(), thin_film_yard(), thin_film_plan());
    return found;
}

}  // namespace

TEST_CASE("a string fuse frees parallel strings of thin film") {
    const std::vector<Unlock>& found = thin_film_unlocks();
    const auto fuse = std::find_if(found.begin(), found.end(), [](const Unlock& unlock) {
        const auto& devices = unlock.changed.devices;
        return !devices.empty() && devices.back().duty == heatmatch::Duty::protects_a_string;
    });
    for (const Unlock& unlock : found) MESSAGE(unlock.said.text());
    REQUIRE(fuse != found.end());
    CHECK(fuse->kwh > 0.1 * thin_film_plan().kwh);
    REQUIRE(fuse->price);
    CHECK(*fuse->price > 0.0);
}

// Source: plans of the changed installations.
TEST_CASE("an unlock has the heat of a plan of the changed yard, most first") {
    double last = 1e9;
    for (const Unlock& unlock : thin_film_unlocks()) {
        CAPTURE(unlock.said.text());
        CHECK(unlock.kwh <= last);
        last = unlock.kwh;
        Installation changed = unlock.changed;
        changed.goals.headroom_min = thin_film_plan().headroom;
        const Plan then = heatmatch::plan(starter(), changed);
        CHECK(then.kwh - thin_film_plan().kwh ==
              doctest::Approx(unlock.kwh).epsilon(0.03).scale(0.02 * then.kwh));
        CHECK(unlock.said.text().find_first_of("{}") == std::string::npos);
    }
}

TEST_CASE("a limit on voltage is unlocked with the duties that it brings") {
    Installation yard = thin_film_yard();
    yard.panels = {{.group = "barn", .panel = "silicon-60-cell-245", .count = 2}};
    yard.goals.volts_max = 55.0;
    const Plan low = heatmatch::plan(starter(), yard);
    REQUIRE(!low.circuits.empty());
    const auto found = heatmatch::unlocks(starter(), yard, low);
    const auto volts = std::find_if(found.begin(), found.end(), [](const Unlock& unlock) {
        return !unlock.changed.goals.volts_max.has_value();
    });
    REQUIRE(volts != found.end());
    CHECK(volts->crosses_v == 80.0);
    CHECK(volts->said.text().find("80 V") != std::string::npos);
}

TEST_CASE("unlocks are told by heat, and ordered by money") {
    const std::vector<Unlock>& found = thin_film_unlocks();
    REQUIRE(found.size() > 1);
    const heatmatch::Sentences lines = heatmatch::unlock_lines(found, "USD");
    REQUIRE(lines.size() == found.size() + 1);
    CHECK(lines.front().text().find("(1) ") == 0);
    const std::string last = lines.back().text();
    CAPTURE(last);
    const auto cheapest = std::min_element(
        found.begin(), found.end(),
        [](const Unlock& a, const Unlock& b) { return a.price_per_kwh() < b.price_per_kwh(); });
    const std::string number = std::to_string(cheapest - found.begin() + 1);
    CHECK(last.find(": (" + number + ")") != std::string::npos);
    CHECK(heatmatch::unlock_lines({}, "USD").size() == 1);
}

TEST_CASE("a yard that lacks nothing has no unlocks") {
    Installation yard = demo();
    yard.circuit.reset();
    yard.panels = {{.group = "one", .panel = "silicon-36-cell-135", .count = 1}};
    yard.elements = {{.element = "storage-rod-1000-240", .count = 1}};
    yard.goals.budget.reset();
    CHECK(heatmatch::unlocks(starter(), yard, heatmatch::plan(starter(), yard)).empty());
}
