#include "screen.hpp"

#include <vector>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

Tally screen_all(const ScreenContext& context) {
    const RankOptions& options = *context.options;
    const std::size_t groups = context.installation->panels.size();
    // A few groups are shared out by their hook-ups, so that no thread waits long for another.
    constexpr std::size_t few = 32;
    // What wire chosen for heat costs is counted where it is looked for: each group by itself, so
    // that no other thread's finds change the counts.
    const bool apart = context.lays_for_heat;
    const std::size_t shares = groups < few && !apart ? 4 : 1;
    const std::size_t jobs = groups * shares;
    const std::size_t workers = worker_count(options.threads, jobs);
    std::vector<Tally> tallies(workers, Tally(options.top, options.keep_rejected));
    if (apart) {
        for (Tally& tally : tallies) tally = Tally(options.top, options.keep_rejected);
    }
    Progress progress;
    if (options.progress) {
        progress = [&options](double share) { return options.progress(screening_share * share); };
    }
    parallel_for(
        jobs, workers,
        [&](std::size_t job, std::size_t worker, const Pulse& pulse) {
            screen_group(context, job / shares, {job % shares, shares}, tallies[worker], pulse);
        },
        progress);
    for (std::size_t i = 1; i < workers; ++i) tallies[0].add(tallies[i]);
    return tallies[0];
}

}  // namespace heatmatch
