#include <atomic>
#include <chrono>
#include <stdexcept>
#include <thread>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/parallel.hpp"

using heatmatch::parallel_for;
using heatmatch::Pulse;
using heatmatch::worker_count;

TEST_CASE("every item is worked once, by a worker below their number") {
    for (std::size_t workers : {1U, 2U, 5U}) {
        std::vector<std::atomic<int>> times(1000);
        std::atomic<bool> strange{false};
        parallel_for(times.size(), workers,
                     [&](std::size_t item, std::size_t worker, const Pulse&) {
                         ++times[item];
                         if (worker >= workers) strange = true;
                     });
        for (const auto& count : times) CHECK(count == 1);
        CHECK(!strange);
    }
}

TEST_CASE("progress rises and comes from the calling thread") {
    double last = 0.0;
    const auto caller = std::this_thread::get_id();
    parallel_for(
        200, 3, [](std::size_t, std::size_t, const Pulse&) {},
        [&](double share) {
            CHECK(std::this_thread::get_id() == caller);
            CHECK(share > last);
            CHECK(share <= 1.0);
            last = share;
            return true;
        });
}

TEST_CASE("a progress callback can stop the work") {
    std::atomic<int> worked{0};
    // Items of some length: a hundred thousand empty ones may end before the first report.
    const auto item = [&](std::size_t, std::size_t, const Pulse&) {
        std::this_thread::sleep_for(std::chrono::microseconds(20));
        ++worked;
    };
    CHECK_THROWS_AS(parallel_for(100000, 2, item, [](double) { return false; }),
                    heatmatch::Interrupted);
    CHECK(worked < 100000);
}

TEST_CASE("one long item can be stopped from within, by every worker") {
    for (std::size_t workers : {1U, 3U}) {
        int calls = 0;
        CHECK_THROWS_AS(parallel_for(
                            workers, workers,
                            [](std::size_t, std::size_t, const Pulse& pulse) {
                                while (true) pulse();
                            },
                            [&](double share) {
                                CHECK(share == 0.0);
                                return ++calls < 5;
                            }),
                        heatmatch::Interrupted);
        CHECK(calls == 5);
    }
}

TEST_CASE("an exception of the work is rethrown to the caller") {
    const auto work = [](std::size_t item, std::size_t, const Pulse&) {
        if (item == 17) throw std::out_of_range("seventeen");
    };
    CHECK_THROWS_WITH_AS(parallel_for(100, 4, work), "seventeen", std::out_of_range);
}

TEST_CASE("no items need no work, and there are never more workers than items") {
    parallel_for(0, 4, [](std::size_t, std::size_t, const Pulse&) { CHECK(false); });
    CHECK(worker_count(8, 3) == 3);
    CHECK(worker_count(2, 100) == 2);
    CHECK(worker_count(0, 100) >= 1);
    CHECK(worker_count(4, 0) == 1);
}

TEST_CASE("progress is reported to a callback, which may stop the work") {
    double told = 0.0;
    heatmatch::tell_progress({}, 0.5);
    const auto listening = [&told](double share) {
        told = share;
        return share < 0.5;
    };
    heatmatch::tell_progress(listening, 0.25);
    CHECK(told == 0.25);
    CHECK_THROWS_AS(heatmatch::tell_progress(listening, 0.5), heatmatch::Interrupted);
}
