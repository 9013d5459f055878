#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// The demo's store, dry, damp or full of water, with a way out or without.
Margin steam(const char* medium, std::optional<bool> moist, std::optional<bool> vented) {
    Installation installation = demo();
    installation.store->medium = medium;
    installation.store->moist = moist;
    installation.store->vented = vented;
    return margin_of(heatmatch::assess(starter(), installation).margins(), "pressure");
}

}  // namespace

TEST_CASE("dry sand makes no steam") {
    CHECK(steam("dry-sand", false, false).severity == Severity::none);
    check_sentence(steam("dry-sand", false, false));
}

// Source: common practice, no source: water expands and boils, a closed vessel bursts.
TEST_CASE("a damp fill or water without a way out is a danger where it gets hot") {
    CHECK(steam("dry-sand", true, false).severity == Severity::danger);
    CHECK(steam("water", false, false).severity >= Severity::warning);
    for (const auto& vented : {std::optional(false), std::optional(true), std::optional<bool>{}}) {
        check_sentence(steam("water", false, vented));
        check_sentence(steam("dry-sand", true, vented));
    }
}

TEST_CASE("an unstated way out counts as none in the worst case") {
    const Margin margin = steam("dry-sand", true, std::nullopt);
    CHECK(margin.severity == Severity::warning);
    CHECK(margin.worst_severity == Severity::danger);
    CHECK(steam("dry-sand", std::nullopt, std::nullopt).worst_severity == Severity::danger);
    CHECK(steam("dry-sand", std::nullopt, true).worst_severity != Severity::danger);
}
