#include "refusal.hpp"
#include "two_circuits.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"

using heatmatch::existing_circuits;
using heatmatch::Installation;
using heatmatch::installation_of;

namespace {

std::string refused(const Installation& installation) {
    return refusal_of<heatmatch::InvalidInput>(
        [&] { heatmatch::check_installation(installation, starter()); });
}

}  // namespace

TEST_CASE("one circuit is the short form of a list of one") {
    Installation listed = demo();
    listed.circuits = {*listed.circuit};
    listed.circuit.reset();
    REQUIRE(existing_circuits(listed).size() == 1);
    CHECK(existing_circuits(listed) == existing_circuits(demo()));
    CHECK(existing_circuits(listed).front().name == "circuit 1");
    listed.circuits.clear();
    CHECK(existing_circuits(listed).empty());
}

TEST_CASE("a run or device that no circuit names is in each, a named one in those naming it") {
    Installation house = two_circuits();
    house.circuits[0].runs = {"home run"};
    house.circuits[1].devices = {"snap-disc-fixed"};
    const Installation barn = installation_of(house, 0);
    const Installation porch = installation_of(house, 1);
    CHECK(barn.runs.size() == house.runs.size());
    CHECK(porch.runs.size() == house.runs.size() - 1);
    CHECK(barn.devices.size() == house.devices.size() - 1);
    CHECK(porch.devices.size() == house.devices.size());
    CHECK(barn.circuits.empty());
    REQUIRE(barn.circuit);
    CHECK(barn.circuit->name == "barn");
    CHECK_THROWS_AS(static_cast<void>(installation_of(house, 2)), heatmatch::InvalidInput);
}

TEST_CASE("circuits go to JSON and back as they were") {
    Installation house = two_circuits();
    house.circuits[0].runs = {"home run", "hot tail"};
    house.circuits[1].devices = {"pv-isolator-2-pole"};
    const std::string text = heatmatch::installation_to_json(house);
    const Installation again = heatmatch::installation_from_json(text);
    CHECK(again.circuits == house.circuits);
    CHECK_FALSE(again.circuit);
    CHECK(heatmatch::installation_to_json(again) == text);
}

TEST_CASE("circuits that contradict the installation are refused in one sentence") {
    Installation both = two_circuits();
    both.circuit = demo().circuit;
    CHECK(contains(refused(both), "circuits"));
    Installation same = two_circuits();
    same.circuits[1].name = "barn";
    CHECK(contains(refused(same), "\"barn\""));
    Installation run = two_circuits();
    run.circuits[0].runs = {"home rum"};
    CHECK(contains(refused(run), "home run"));
    Installation device = two_circuits();
    device.circuits[1].devices = {"breaker"};
    CHECK(contains(refused(device), "devices"));
    Installation group = two_circuits();
    group.circuits[1].group = "porch";
    CHECK(contains(
        refusal_of<heatmatch::NotFound>([&] { heatmatch::check_installation(group, starter()); }),
        "porch"));
    CHECK_NOTHROW(heatmatch::check_installation(two_circuits(), starter()));
}
