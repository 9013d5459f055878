#include "screen.hpp"

#include <vector>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

Tally screen_all(const ScreenContext& context) {
    const RankOptions& options = *context.options;
    const std::size_t groups = context.installation->panels.size();
    // A few groups are divided by their hook-ups, so that no thread waits long for another.
    constexpr std::size_t few = 32;
    // The budget is checked against the whole bill only for evaluated pairings: one list for each
    // group, so that the counts do not depend on other groups.
    const bool has_budget = context.installation->goals.budget.has_value();
    const bool by_group = (context.lays_for_heat || has_budget) && groups < few;
    const std::size_t shares = groups < few && !by_group ? 4 : 1;
    const std::size_t jobs = groups * shares;
    const std::size_t workers = worker_count(options.threads, jobs);
    std::vector<Tally> tallies(by_group ? jobs : workers,
                               Tally(options.top, options.keep_rejected));
    if (by_group) {
        for (Tally& tally : tallies) tally = Tally(options.top, options.keep_rejected);
    }
    Progress progress;
    if (options.progress) {
        progress = [&options](double share) { return options.progress(screening_share * share); };
    }
    parallel_for(
        jobs, workers,
        [&](std::size_t job, std::size_t worker, const Pulse& pulse) {
            Tally& tally = tallies[by_group ? job : worker];
            screen_group(context, job / shares, {job % shares, shares}, tally, pulse);
        },
        progress);
    for (std::size_t i = 1; i < tallies.size(); ++i) tallies[0].add(tallies[i]);
    return tallies[0];
}

}  // namespace heatmatch
