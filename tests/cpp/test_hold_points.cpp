#include "demo.hpp"
#include "table_texts.hpp"

#include <array>

#include <doctest/doctest.h>

#include "heatmatch/answer/hold_points.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using namespace heatmatch;

namespace {

std::string held_jobs(const Candidate& candidate) {
    const std::array<const Candidate*, 1> circuits{&candidate};
    std::string all;
    for (const Sentences& row : hold_points_table(circuits).rows) all += line(row) + '\n';
    return all;
}

}  // namespace

TEST_CASE("licensed and live work is named with a hold point and a person") {
    const Candidate candidate = assess(starter(), demo());
    const std::array<const Candidate*, 1> circuits{&candidate};
    const Table table = hold_points_table(circuits);
    for (const Sentences& row : table.rows) {
        REQUIRE(row.size() == table.columns.size());
        CHECK(contains(row[1].text(), "Do not "));
        CHECK(contains(row[1].text(), " until "));
        CHECK_FALSE(row[2].empty());
    }
    const std::string jobs = held_jobs(candidate);
    for (const char* job : {"live DC work", "plugs", "insulation test", "bonding", "dual supply"}) {
        CHECK(contains(jobs, job));
    }
    CHECK(contains(jobs, "up to 90 V"));  // Voc of the demo's barn pair at the record low
    CHECK_FALSE(contains(jobs, "pressurized water"));  // it heats sand
    CHECK(hold_points_table({}).rows.empty());
}

TEST_CASE("a store that is not described may hold water") {
    Installation yard = demo();
    yard.store.reset();
    CHECK(contains(held_jobs(assess(starter(), yard)), "pressurized water"));
}
