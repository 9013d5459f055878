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
                  const std::function<void(std::size_t, std::size_t, const Pulse&)>& work,
                  const Progress& progress) {
    std::atomic<std::size_t> next{0};
    std::atomic<std::size_t> done{0};
    std::atomic<bool> stop{false};
    std::mutex guard;
    std::exception_ptr thrown;
    double told = 0.0;
    const auto share = [&] { return static_cast<double>(done) / static_cast<double>(items); };
    const auto tell = [&] {
        told = std::max(told, share());
        if (!progress(told)) throw Interrupted();
    };
    const auto run = [&](std::size_t worker) {
        const bool tells = worker == 0 && progress;
        const Pulse pulse = [&stop, &tell, tells] {
            if (stop) throw Interrupted();
            if (tells) tell();
        };
        try {
            while (!stop) {
                const std::size_t item = next++;
                if (item >= items) return;
                work(item, worker, pulse);
                ++done;
                if (tells) tell();
            }
        } catch (...) {
            const std::scoped_lock lock(guard);
            if (!thrown) thrown = std::current_exception();
            stop = true;
        }
    };
    {
        std::vector<std::jthread> helpers;
        for (std::size_t worker = 1; worker < workers; ++worker) helpers.emplace_back(run, worker);
        run(0);
    }
    if (thrown) std::rethrow_exception(thrown);
    if (items > 0 && progress && told < 1.0) tell();
}

}  // namespace heatmatch
