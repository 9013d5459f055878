#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/floor_margin.hpp"

using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;
using heatmatch::StandsOn;

namespace {

/// The demo's store on something, its rods so far over the floor.
Margin floor_at(const std::optional<StandsOn>& on, const std::optional<double>& height_mm,
                std::optional<heatmatch::StoreMaterial> vessel = heatmatch::StoreMaterial::steel) {
    Installation installation = demo();
    installation.store->stands_on = on;
    installation.store->element_height_mm = height_mm;
    installation.store->vessel = vessel;
    return margin_of(heatmatch::assess(starter(), installation).margins(), "floor");
}

}  // namespace

// Limit: 77 °C for wood over years (babrauskas-2007), or 50 K above air of 25 °C (from memory).
TEST_CASE("wood under rods that nearly touch the floor chars, stone does not") {
    const Margin wood = floor_at(StandsOn::wood, 10.0);
    CHECK(wood.severity == Severity::danger);
    CHECK(*wood.limit == 75.0);
    CHECK(*wood.value > 75.0);
    CHECK(*wood.value_high >= *wood.value);
    const Margin stone = floor_at(StandsOn::concrete, 10.0);
    CHECK(stone.severity == Severity::none);
    CHECK_FALSE(stone.limit);
    CHECK(contains(stone.sentence(), "It does not char"));
    for (const Margin& margin : {wood, stone}) check_sentence(margin);
}

TEST_CASE("an unstated floor is a warning, and a danger at worst") {
    const Margin on = floor_at(std::nullopt, 10.0);
    CHECK(on.severity == Severity::warning);
    CHECK(on.worst_severity == Severity::danger);
    CHECK(on.missing == std::vector<std::string>{"store.stands_on"});
    const Margin height = floor_at(StandsOn::wood, std::nullopt);
    CHECK(height.worst_severity == Severity::danger);
    CHECK(height.severity < Severity::danger);
}

TEST_CASE("a bottom on legs burns a hand, and a vessel with a limit below its bottom warns") {
    const Margin legs = floor_at(StandsOn::metal_legs, 10.0);
    CHECK(contains(legs.sentence(), "where a hand can reach it"));
    const Margin plastic =
        floor_at(StandsOn::concrete, 10.0, heatmatch::StoreMaterial::polyethylene);
    CHECK(plastic.severity == Severity::warning);
    CHECK(contains(plastic.sentence(), "stands 60"));
    const Margin unknown = floor_at(StandsOn::concrete, 10.0, std::nullopt);
    CHECK(unknown.severity == Severity::warning);
    CHECK(unknown.missing == std::vector<std::string>{"store.vessel"});
}
