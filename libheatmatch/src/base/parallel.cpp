#include "heatmatch/base/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace heatmatch {

void tell_progress(const Progress& progress, double share) {
    if (progress && !progress(share)) throw Interrupted();
}

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
    const auto keep = [&] {
        const std::scoped_lock lock(guard);
        if (!thrown) thrown = std::current_exception();
        stop = true;
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
            keep();
        }
    };
    std::size_t running = 0;
    std::condition_variable ended;
    {
        std::vector<std::jthread> helpers;
        for (std::size_t worker = 1; worker < workers; ++worker) {
            const std::scoped_lock lock(guard);
            try {
                helpers.emplace_back([&, worker] {
                    run(worker);
                    const std::scoped_lock ending(guard);
                    --running;
                    ended.notify_one();
                });
                ++running;
            } catch (const std::system_error&) {
                break;  // no more threads available: the running ones do the work
            }
        }
        run(0);
        // The other threads may take long: check for a stop meanwhile.
        constexpr std::chrono::milliseconds between(50);
        std::unique_lock lock(guard);
        while (!ended.wait_for(lock, between, [&running] { return running == 0; })) {
            if (!progress || stop) continue;
            lock.unlock();
            try {
                tell();
            } catch (...) {
                keep();
            }
            lock.lock();
        }
    }
    if (thrown) std::rethrow_exception(thrown);
    if (items > 0 && progress && told < 1.0) tell();
}

}  // namespace heatmatch
