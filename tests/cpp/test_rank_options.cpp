#include "demo.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/answer/ranking_summary.hpp"
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
    for (const double volts : {0.0, 2001.0, nan}) {
        CHECK(field_refused_by_rank(small(), {.volts_max = volts}) == "volts_max");
    }
    CHECK(field_refused_by_rank(small(), {.threads = 257}) == "threads");
    CHECK(field_refused_by_rank(small()) == "nothing");
}

TEST_CASE("arrays above the volts asked for are left out and counted, and nothing else changes") {
    RankOptions few = keep_all();
    const auto& whole = demo_ranking();
    std::vector<std::string> below;
    for (const heatmatch::Candidate& candidate : whole.candidates) {
        if (candidate.circuit.cold_voltage_v() <= 60.0) below.push_back(candidate.circuit.title());
    }
    REQUIRE(!below.empty());
    REQUIRE(below.size() < whole.candidates.size());
    few.volts_max = 60.0;
    const auto asked = rank(starter(), demo(), few);
    Installation goals = demo();
    goals.goals.volts_max = 60.0;
    const auto stated = rank(starter(), goals, keep_all());
    for (const auto* ranking : {&asked, &stated}) {
        std::vector<std::string> titles;
        for (const heatmatch::Candidate& candidate : ranking->candidates) {
            titles.push_back(candidate.circuit.title());
        }
        CHECK(titles == below);
        CHECK(ranking->above_volts > 0);
        CHECK(ranking->above_volts + ranking->evaluated == whole.evaluated);
        CHECK(ranking->volts_max == 60.0);
        REQUIRE(ranking->recommended);
        CHECK(ranking->recommended->circuit.cold_voltage_v() <= 60.0);
    }
    CHECK(heatmatch::short_ranking(asked).text().find(
              std::to_string(asked.above_volts) +
              " more left out: above 60 V at the record low.") != std::string::npos);
    CHECK(whole.above_volts == 0);
}

TEST_CASE("where no array is within the volts asked for, that is what is said") {
    const auto none = rank(starter(), demo(), {.volts_max = 5.0});
    CHECK(none.candidates.empty());
    CHECK(none.rejected.empty());
    CHECK(none.evaluated == 0);
    CHECK(heatmatch::nothing_left(none).text() == "No array is at most 5 V at the record low.");
    CHECK(none.lacking.text().rfind(
              "No array that could be recommended is at most 5 V at the record low.", 0) == 0);
    CHECK(none.lacking.text().find("105 V") != std::string::npos);
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
