#include "demo.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/rank/rank.hpp"

using heatmatch::Hookup;
using heatmatch::Installation;
using heatmatch::rank;
using heatmatch::RankOptions;

namespace {

std::string field_refused_by_rank(const Installation& installation,
                                  const RankOptions& options = {}) {
    try {
        static_cast<void>(rank(starter(), installation, options));
    } catch (const heatmatch::InvalidInput& error) {
        return error.detail().field;
    }
    return "nothing";
}

}  // namespace

TEST_CASE("options that mean nothing are refused by name") {
    const double nan = std::nan("");
    CHECK(field_refused_by_rank(small(), {.max_bank = 0}) == "max_bank");
    CHECK(field_refused_by_rank(small(), {.max_bank = 65}) == "max_bank");
    CHECK(field_refused_by_rank(small(), {.conditions = {}}) == "conditions");
    for (const double sun : {0.0, -1.0, 2001.0, nan}) {
        CHECK(field_refused_by_rank(small(), {.conditions = {{sun, 25.0}}}) ==
              "conditions irradiance_w_m2");
    }
    for (const double cell_c : {-61.0, 111.0, nan}) {
        CHECK(field_refused_by_rank(small(), {.conditions = {{800.0, cell_c}}}) ==
              "conditions cell_temperature_c");
    }
    for (const double coil_c : {0.0, 1201.0, nan}) {
        CHECK(field_refused_by_rank(small(), {.coil_temperature_c = coil_c}) ==
              "coil_temperature_c");
    }
    CHECK(field_refused_by_rank(small(), {.threads = 257}) == "threads");
    CHECK(field_refused_by_rank(small()) == "nothing");
}

TEST_CASE("a ranking may be restricted to one hook-up of panels or of elements") {
    const RankOptions all = keep_all();
    const auto& whole = demo_ranking();
    RankOptions one = all;
    one.panels = Hookup{.series = 2, .parallel = 1};
    one.bank = Hookup{.series = 1, .parallel = 2};
    const auto some = rank(starter(), demo(), one);
    const auto is_one = [](const heatmatch::Candidate& candidate) {
        return candidate.circuit.panels.label() == "2S1P" &&
               candidate.circuit.bank.hookup.label() == "1S2P";
    };
    std::vector<std::string> wanted;
    for (const auto& candidate : whole.candidates)
        if (is_one(candidate)) wanted.push_back(candidate.circuit.title());
    std::vector<std::string> found;
    for (const auto& candidate : some.candidates) found.push_back(candidate.circuit.title());
    CHECK(found == wanted);
    CHECK(found.size() > 1);
    CHECK(some.evaluated < whole.evaluated);
    CHECK(std::all_of(some.rejected.begin(), some.rejected.end(), is_one));
    one.bank = Hookup{.series = 3, .parallel = 3};
    CHECK(field_refused_by_rank(small(), one) == "bank");
}

TEST_CASE("a ranking may be restricted to one group or one element") {
    RankOptions one = keep_all();
    one.group = "porch four";
    one.element = "storage-rod-1000-240";
    const auto found = rank(starter(), demo(), one);
    const auto is_one = [](const heatmatch::Candidate& candidate) {
        return candidate.circuit.owned.group == "porch four" &&
               candidate.circuit.bank.element.id == "storage-rod-1000-240";
    };
    CHECK(std::all_of(found.candidates.begin(), found.candidates.end(), is_one));
    const auto& whole = demo_ranking();
    CHECK(static_cast<std::size_t>(std::count_if(whole.candidates.begin(), whole.candidates.end(),
                                                 is_one)) == found.candidates.size());
    CHECK(found.candidates.size() > 5);
    CHECK(field_refused_by_rank(small(), {.element = "range-coil-2600-240"}) == "element");
    CHECK_THROWS_AS(static_cast<void>(rank(starter(), small(), {.element = "no-such"})),
                    heatmatch::NotFound);
    CHECK_THROWS_AS(static_cast<void>(rank(starter(), small(), {.group = "no such"})),
                    heatmatch::NotFound);
}

TEST_CASE("a family that no element is of is refused with those that are") {
    Installation installation = small();
    installation.elements = {{.any = heatmatch::ElementFilter{.family = {"oven"}}, .count = 2}};
    CHECK(field_refused_by_rank(installation) == "elements.any.family");
    installation.elements[0].any->family = {"oven lower"};
    CHECK(field_refused_by_rank(installation) == "nothing");
}

TEST_CASE("an installation without panels or elements is refused") {
    Installation installation = small();
    installation.panels.clear();
    CHECK(field_refused_by_rank(installation) == "panels");
    installation = small();
    installation.elements.clear();
    CHECK(field_refused_by_rank(installation) == "elements");
}

TEST_CASE("progress rises to the end and may stop the ranking") {
    RankOptions options = keep_all();
    options.group = "porch four";
    std::vector<double> seen;
    options.progress = [&](double done) {
        seen.push_back(done);
        return true;
    };
    static_cast<void>(rank(starter(), demo(), options));
    REQUIRE(seen.size() > 3);
    CHECK(std::is_sorted(seen.begin(), seen.end()));
    CHECK(seen.front() >= 0.0);
    CHECK(seen.back() == 1.0);
    for (const int stop_at : {1, 2, 3, 10}) {
        int calls = 0;
        options.progress = [&](double) { return ++calls < stop_at; };
        CHECK_THROWS_AS(static_cast<void>(rank(starter(), demo(), options)),
                        heatmatch::Interrupted);
        CHECK(calls == stop_at);
    }
}
