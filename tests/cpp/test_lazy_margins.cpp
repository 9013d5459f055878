#include <thread>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/lazy_margins.hpp"

using heatmatch::LazyMargins;
using heatmatch::Margin;

namespace {

std::vector<Margin> one(const std::string& name) {
    return {{.name = name}};
}

}  // namespace

TEST_CASE("margins are made when they are first read, and once") {
    const LazyMargins margins;
    int made = 0;
    const auto make = [&made] {
        ++made;
        return one("drop");
    };
    CHECK(margins.read(make).front().name == "drop");
    CHECK(&margins.read(make) == &margins.read(make));
    CHECK(made == 1);
    CHECK(LazyMargins(one("given")).read(make).front().name == "given");
    CHECK(made == 1);
}

TEST_CASE("a copy shares computed margins, and computes the others itself") {
    const LazyMargins read;
    static_cast<void>(read.read([] { return one("first"); }));
    const LazyMargins shared = read;  // NOLINT(performance-unnecessary-copy-initialization)
    CHECK(shared.read([] { return one("second"); }).front().name == "first");
    const LazyMargins unread;
    const LazyMargins own = unread;  // NOLINT(performance-unnecessary-copy-initialization)
    static_cast<void>(unread.read([] { return one("first"); }));
    CHECK(own.read([] { return one("second"); }).front().name == "second");
}

TEST_CASE("threads that read at once see the same") {
    const LazyMargins margins;
    std::vector<const std::vector<Margin>*> seen(4);
    std::vector<std::thread> threads;
    for (auto& place : seen) {
        threads.emplace_back([&] { place = &margins.read([] { return one("drop"); }); });
    }
    for (std::thread& thread : threads) thread.join();
    for (const auto* place : seen) CHECK(place == seen.front());
}
