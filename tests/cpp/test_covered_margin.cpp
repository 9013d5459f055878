#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/covered_margin.hpp"

using heatmatch::Margin;
using heatmatch::Severity;

namespace {

Margin covered(const char* medium, std::optional<bool> told) {
    heatmatch::Installation installation = drum();
    installation.store->element_covered = told;
    return heatmatch::covered_margin(circuit_in(installation, "immersion-1500-120", 1, medium));
}

}  // namespace

// Source: common practice, makers' instructions: an immersion element never runs dry.
TEST_CASE("an element not always covered by water is a danger, if not stated a warning") {
    CHECK(covered("water", false).severity == Severity::danger);
    CHECK(*covered("water", false).headroom < 0.0);
    CHECK(covered("water", std::nullopt).severity == Severity::warning);
    CHECK(covered("water", std::nullopt).missing ==
          std::vector<std::string>{"store.element_covered"});
    CHECK(covered("water", true).severity == Severity::none);
    for (const auto& told : {std::optional(false), std::optional(true), std::optional<bool>{}}) {
        check_sentence(covered("water", told));
        CHECK(covered("dry-sand", told).severity == Severity::none);
        CHECK(contains(covered("dry-sand", told).sentence(), "no liquid"));
    }
}

TEST_CASE("an unstated cover counts as none in the worst case") {
    heatmatch::Installation installation = demo();
    installation.store->medium = "water";
    installation.store->vented = true;
    installation.circuit->element = "immersion-1500-120";
    installation.circuit->bank = "1S1P";
    installation.elements = {{.element = "immersion-1500-120", .count = 1}};
    const Margin untold =
        margin_of(heatmatch::assess(starter(), installation).margins(), "element covered");
    CHECK(untold.severity == Severity::warning);
    CHECK(untold.worst_severity == Severity::danger);
    installation.store->element_covered = true;
    const Margin told =
        margin_of(heatmatch::assess(starter(), installation).margins(), "element covered");
    CHECK(told.worst_severity == Severity::none);
}

TEST_CASE("without a store it is not assessed") {
    heatmatch::Circuit circuit;
    circuit.bank.element.id = "some-rod";
    check_not_assessed(heatmatch::covered_margin(circuit), "store");
}
