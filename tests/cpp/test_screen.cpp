#include "demo.hpp"
#include "match/rank/screen.hpp"

#include <cmath>
#include <set>

#include <doctest/doctest.h>

using heatmatch::Candidate;
using heatmatch::Circuit;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

Candidate full_candidate(const heatmatch::ScreenContext& context,
                         const heatmatch::Pairing& pairing) {
    const Circuit frame =
        heatmatch::frame_of(context, pairing.group, heatmatch::panel_of(context, pairing.group),
                            pairing.panels, context.banks[pairing.bank].hookup);
    const Circuit circuit = heatmatch::circuit_of(context, frame, pairing.bank);
    return heatmatch::evaluate(circuit, *context.installation, context.options->conditions);
}

/// Every pairing of an installation, its light record beside its full margins. Gives the reasons
/// why some are rejected.
std::set<std::string> check_screen(Installation installation) {
    installation.goals.budget.reset();
    const heatmatch::RankOptions options;
    const heatmatch::ScreenContext context =
        heatmatch::screen_context(starter(), installation, options, nullptr);
    constexpr std::size_t all = 1000000;
    heatmatch::Tally tally(all, all);
    for (std::size_t group = 0; group < installation.panels.size(); ++group) {
        heatmatch::screen_group(context, group, {}, tally);
    }
    int headrooms = 0;
    int doubts = 0;
    int dangers = 0;
    int lacking = 0;
    int powers = 0;
    const auto same = [](double a, double b) { return std::fabs(a - b) <= 1e-12 * b; };
    for (const heatmatch::Pairing& pairing : tally.sorted()) {
        const Candidate full = full_candidate(context, pairing);
        dangers += full.severity() == Severity::danger ? 1 : 0;
        lacking += full.not_assessed() != pairing.not_assessed ? 1 : 0;
        doubts += (full.worst_severity() == Severity::danger) != pairing.doubtful ? 1 : 0;
        headrooms += std::fabs(full.smallest_headroom() - pairing.headroom) < 1e-12 ? 0 : 1;
        powers += same(full.mean_power_w(), pairing.merit) ? 0 : 1;
    }
    const auto rejected = tally.rejected.sorted();
    std::set<std::string> reasons;
    CHECK(tally.evaluated == tally.sorted().size() + rejected.size());
    for (const heatmatch::Pairing& pairing : rejected) {
        const Candidate full = full_candidate(context, pairing);
        const std::string& reason = context.reasons->name(pairing.reason);
        reasons.insert(reason);
        const bool found = std::any_of(
            full.margins().begin(), full.margins().end(), [&reason](const Margin& margin) {
                return margin.name == reason && margin.severity == Severity::danger;
            });
        dangers += found ? 0 : 1;
        powers += same(full.mean_power_w(), pairing.merit) ? 0 : 1;
    }
    CHECK_MESSAGE(dangers == 0, "pairings whose danger the screen does not see, or sees wrongly");
    CHECK_MESSAGE(doubts == 0, "pairings that the screen takes for doubtful, or not, wrongly");
    CHECK_MESSAGE(headrooms == 0, "pairings whose headroom differs");
    CHECK_MESSAGE(lacking == 0, "pairings whose count of what is not assessed differs");
    CHECK_MESSAGE(powers == 0, "pairings whose power differs");
    return reasons;
}

}  // namespace

TEST_CASE("the screen of the demo equals its full margins" * doctest::test_suite("numerical")) {
    check_screen(demo());
}

TEST_CASE("the screen equals the full margins where terminals are hotter than they may be") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.elements = {{.any = heatmatch::ElementFilter{}, .count = 2}};
    check_screen(installation);
}

// Two rods in parallel; at half the array's watts each they last, at all of them one does not.
TEST_CASE("the screen sees the sheath of what is left when a parallel branch opens") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.panels.front().count = 8;
    installation.elements = {{.element = "storage-rod-1000-240", .count = 4},
                             {.element = "strip-500-240", .count = 3}};
    for (const bool said : {true, false}) {
        CAPTURE(said);
        if (!said) {
            installation.runs.clear();
            installation.devices.clear();
        }
        CHECK(check_screen(installation).contains("survivor sheath"));
    }
}

TEST_CASE("the screen equals the full margins behind long thin wire in the sun") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.panels.front().count = 4;
    installation.elements = {{.element = "tubular-1000-120", .count = 3}};
    installation.site.bright_irradiance_w_m2 = 1200.0;
    installation.runs.front().wire = "pv-wire-12-awg";
    installation.runs.front().length_m = 90.0;
    check_screen(installation);
}

TEST_CASE("the screen equals the full margins with nothing said about wire and devices") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.runs.clear();
    installation.devices.clear();
    check_screen(installation);
}

TEST_CASE("the screen equals the full margins where live parts are within reach") {
    Installation installation = demo();
    installation.panels = {{.group = "small", .panel = "silicon-36-cell-90", .count = 2},
                           {.group = "high", .panel = "cdte-100", .count = 2}};
    installation.elements = {{.element = "immersion-dc-200-12", .count = 2}};
    installation.site.live_parts_enclosed = false;
    check_screen(installation);
    installation.runs.clear();
    installation.devices.clear();
    check_screen(installation);
    installation.site.live_parts_enclosed.reset();
    check_screen(installation);
}

TEST_CASE("the screen equals the full margins where one group finds no wire at the element" *
          doctest::test_suite("numerical")) {
    Installation installation = demo();
    installation.runs.back().wire = "choose";
    installation.runs.back().connector.clear();
    installation.panels = {{.group = "one", .panel = "silicon-60-cell-245", .count = 1},
                           {.group = "high", .panel = "cdte-430", .count = 4}};
    check_screen(installation);
}
