#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/bonding_margin.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"

using heatmatch::bonding_margin;
using heatmatch::Margin;
using heatmatch::Severity;
using heatmatch::Site;

namespace {

/// One panel at 43 V cold or two at 87 V, no store.
Margin bonded(int series, std::optional<bool> frames, bool wet) {
    return bonding_margin(
        bench_circuit("silicon-60-cell-245", {series, 1}, "tubular-1000-120", {1, 1}),
        {.record_low_c = -20.0, .wet = wet, .frames_bonded = frames});
}

}  // namespace

// Source: IEC 60364-4-41, 414.4.5: 60 V direct current dry, 30 V in every other case.
TEST_CASE("the touch limit is 60 V dry and 30 V wet") {
    CHECK(heatmatch::touch_limit_v({.wet = false}) == 60.0);
    CHECK(heatmatch::touch_limit_v({.wet = true}) == 30.0);
}

TEST_CASE("frames that are not bonded are a danger above the touch limit") {
    CHECK(bonded(2, false, false).severity == Severity::danger);
    CHECK(bonded(2, true, false).severity == Severity::none);
    CHECK(bonded(2, std::nullopt, false).severity == Severity::warning);
    CHECK(bonded(1, false, false).severity == Severity::none);
    CHECK(bonded(1, false, true).severity == Severity::danger);
    for (const auto& frames : {std::optional(false), std::optional(true), std::optional<bool>{}}) {
        check_sentence(bonded(2, frames, true));
        check_sentence(bonded(1, frames, false));
    }
}

TEST_CASE("unstated bonding is named") {
    CHECK(bonded(2, std::nullopt, false).missing == std::vector<std::string>{"site.frames_bonded"});
    heatmatch::Store store{.vessel_bonded = false};
    const auto gaps = heatmatch::bonding_gaps({.frames_bonded = true}, &store);
    CHECK(gaps.open == std::vector<std::string>{"store.vessel_bonded"});
    CHECK(gaps.not_told == std::vector<std::string>{"store.sheath_bonded"});
}
