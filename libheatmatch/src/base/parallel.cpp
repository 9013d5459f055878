#include "heatmatch/base/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <thread>
#include <vector>

namespace heatmatch {

std::size_t worker_count(std::size_t wanted, std::size_t items) {
    const std::size_t machine = std::max(1U, std::thread::hardware_concurrency());
    return std::clamp<std::size_t>(wanted == 0 ? machine : wanted, 1,
                                   std::max<std::size_t>(items, 1));
}

void parallel_for(std::size_t items, std::size_t workers,
                  const std::function<void(std::size_t, std::size_t)>& work,
                  const Progress& progress) {
    std::atomic<std::size_t> next{0};
    std::atomic<std::size_t> done{0};
    std::atomic<bool> stop{false};
    std::mutex guard;
    std::exception_ptr thrown;
    double told = 0.0;
    const auto keep = [&](std::exception_ptr error) {
        const std::scoped_lock lock(guard);
        if (!thrown) thrown = std::move(error);
        stop = true;
    };
    const auto run = [&](std::size_t worker) {
        try {
            while (!stop) {
                const std::size_t item = next++;
                if (item >= items) return;
                work(item, worker);
                const double share = static_cast<double>(++done) / static_cast<double>(items);
                if (worker != 0 || !progress) continue;
                told = share;
                if (!progress(share)) throw Interrupted();
            }
        } catch (...) {
            keep(std::current_exception());
        }
    };
    {
        std::vector<std::jthread> helpers;
        for (std::size_t worker = 1; worker < workers; ++worker) helpers.emplace_back(run, worker);
        run(0);
    }
    if (thrown) std::rethrow_exception(thrown);
    if (items > 0 && progress && told < 1.0 && !progress(1.0)) throw Interrupted();
}

}  // namespace heatmatch
