#pragma once

#include "demo.hpp"
#include "match/rank/screen.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <doctest/doctest.h>

inline heatmatch::Candidate full_candidate(const heatmatch::ScreenContext& context,
                                           const heatmatch::Pairing& pairing) {
    const heatmatch::Circuit frame =
        heatmatch::frame_of(context, pairing.group, heatmatch::panel_of(context, pairing.group),
                            pairing.panels, context.banks[pairing.bank].hookup);
    const heatmatch::Circuit circuit = heatmatch::circuit_of(context, frame, pairing.bank);
    return heatmatch::evaluate(circuit, *context.installation, context.options->conditions,
                               *context.parts);
}

/// Every pairing of an installation, its light record beside its full margins. Gives the reasons
/// why some are rejected.
inline std::set<std::string> check_screen(heatmatch::Installation installation,
                                          const heatmatch::Parts& parts = starter()) {
    installation.goals.budget.reset();
    heatmatch::RankOptions options;
    options.fold = false;
    const heatmatch::ScreenContext context =
        heatmatch::screen_context(parts, installation, options, nullptr);
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
        const heatmatch::Candidate full = full_candidate(context, pairing);
        dangers += full.severity() == heatmatch::Severity::danger ? 1 : 0;
        lacking += full.not_assessed() != pairing.not_assessed ? 1 : 0;
        doubts +=
            (full.worst_severity() == heatmatch::Severity::danger) != pairing.doubtful ? 1 : 0;
        headrooms += std::fabs(full.smallest_headroom() - pairing.headroom) < 1e-12 ? 0 : 1;
        powers += same(full.mean_power_w(), pairing.objective) ? 0 : 1;
    }
    const auto rejected = tally.rejected.sorted();
    std::set<std::string> reasons;
    CHECK(tally.evaluated == tally.sorted().size() + rejected.size());
    for (const heatmatch::Pairing& pairing : rejected) {
        const heatmatch::Candidate full = full_candidate(context, pairing);
        const std::string& reason = context.reasons->name(pairing.reason);
        reasons.insert(reason);
        const bool found = std::any_of(full.margins().begin(), full.margins().end(),
                                       [&reason](const heatmatch::Margin& margin) {
                                           return margin.name == reason &&
                                                  margin.severity == heatmatch::Severity::danger;
                                       });
        dangers += found ? 0 : 1;
        powers += same(full.mean_power_w(), pairing.objective) ? 0 : 1;
    }
    CHECK_MESSAGE(dangers == 0, "pairings whose danger the screen does not see, or sees wrongly");
    CHECK_MESSAGE(doubts == 0, "pairings that the screen takes for doubtful, or not, wrongly");
    CHECK_MESSAGE(headrooms == 0, "pairings whose headroom differs");
    CHECK_MESSAGE(lacking == 0, "pairings whose count of what is not assessed differs");
    CHECK_MESSAGE(powers == 0, "pairings whose power differs");
    return reasons;
}
