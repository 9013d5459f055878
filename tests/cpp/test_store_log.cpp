#include "refusal.hpp"
#include "store_log_bench.hpp"

#include <algorithm>

#include <doctest/doctest.h>

using namespace heatmatch;

namespace {

const StoreLog& good() {
    static const StoreLog log = made_log(standing(), 0.27, 1.0, 0.1, 1);
    return log;
}

std::string refusal_with(StoreLog log) {
    return refusal_of([&log] { (void)checked_log(log); });
}

}  // namespace

TEST_CASE("a good log is unchanged") {
    const StoreLog checked = checked_log(good());
    CHECK(checked.remarks.empty());
    CHECK(checked.readings() == 3 * 193);
    CHECK(checked.temperature_c == good().temperature_c);
}

TEST_CASE("times out of order, and lists of unequal length, are refused by row") {
    StoreLog log = good();
    std::swap(log.hours[5], log.hours[6]);
    CHECK(holds(refusal_with(log), "hours in row 6"));
    log = good();
    log.hours[7] = log.hours[6];
    CHECK(holds(refusal_with(log), "sort the rows by time"));
    log = good();
    log.power_w.pop_back();
    CHECK(holds(refusal_with(log), "192 values"));
    log = good();
    log.temperature_c.pop_back();
    CHECK(holds(refusal_with(log), "one for each probe"));
}

TEST_CASE("impossible values are refused with the permitted ones") {
    StoreLog log = good();
    log.power_w[3] = -5.0;
    CHECK(holds(refusal_with(log), "power_w in row 3"));
    log = good();
    log.air_c[0] = 281.0;  // kelvin
    CHECK(holds(refusal_with(log), "not in °F or K"));
    log = good();
    log.probes[0].radius_m.reset();
    CHECK(holds(refusal_with(log), "without radius or height"));
    log.probes[0].place = static_cast<heatmatch::ProbePlace>(7);
    CHECK(holds(refusal_with(log), "bed, wall, lid or sheath"));
}

TEST_CASE("a thermocouple that is stuck or open is omitted and reported") {
    StoreLog log = good();
    std::fill(log.temperature_c[1].begin(), log.temperature_c[1].end(), 21.3);
    const StoreLog stuck = checked_log(log);
    CHECK(stuck.readings() == 2 * 193);
    REQUIRE(stuck.remarks.size() == 1);
    CHECK(holds(stuck.remarks[0], "stays constant while the others change"));

    log = good();
    log.temperature_c[0][50] = 1372.0;
    log.temperature_c[0][51] = -200.0;
    const StoreLog open = checked_log(log);
    CHECK(open.readings() == 3 * 193 - 2);
    CHECK(holds(open.remarks[0], "2 readings of \"beside the rods\""));
    // Source: -150 °C are -238 °F, 1250 °C are 2282 °F.
    CHECK(open.remarks[0].text(UnitSystem::us).find("Below -238 or above 2282 °F") !=
          std::string::npos);

    log = good();
    std::fill(log.temperature_c[2].begin() + 100, log.temperature_c[2].end(), 19.7);
    const StoreLog frozen = checked_log(log);
    CHECK(frozen.readings() == 2 * 193 + 100);
    CHECK(holds(frozen.remarks[0], "from row 100 on"));
}

TEST_CASE("a log is read from CSV") {
    const StoreLog log = store_log_from_csv(
        "hours,power_w,air_c,wall_c,\"bed_c@0.12,0.40\"\n"
        "0,0,8,8.1,8.0\n"
        "0.5,120,8.5,8.1,9.2\n"
        "1,130,9,,12.25\n");
    CHECK(log.size() == 3);
    REQUIRE(log.probes.size() == 2);
    CHECK(log.probes[0].place == heatmatch::ProbePlace::wall);
    CHECK(log.probes[1].place == heatmatch::ProbePlace::bed);
    CHECK(*log.probes[1].radius_m == 0.12);
    CHECK(*log.probes[1].height_m == 0.40);
    CHECK(std::isnan(log.temperature_c[0][2]));
    CHECK(log.temperature_c[1][2] == 12.25);
    CHECK(log.readings() == 5);
}

TEST_CASE("CSV that is not a log is refused by line and column") {
    const auto refused = [](const char* text) {
        return refusal_of([text] { (void)store_log_from_csv(text); });
    };
    CHECK(holds(refused(""), "header"));
    CHECK(holds(refused("hours,power_w,wall_c\n0,0,8\n"), "without air_c"));
    CHECK(holds(refused("hours,power_w,air_c,wall_c\n0,0,8,x\n"), "wall_c in line 2"));
    CHECK(holds(refused("hours,power_w,air_c,wall_c\n0,0,8\n"), "line 2"));
    CHECK(holds(refused("hours,power_w,air_c,wall_c,wall_c\n0,0,8,1,1\n"), "twice"));
    CHECK(holds(refused("hours,power_w,air_c,attic_c\n0,0,8,1\n1,0,8,2\n"), "attic"));
    CHECK(holds(refused("hours,power_w,air_c,\"bed_c@0.12\"\n0,0,8,1\n"), "separated by a comma"));
}

namespace {

/// Forty hours of 100 W with three probes that warm evenly.
StoreLog warming() {
    StoreLog log;
    for (int row = 0; row < 40; ++row) {
        log.hours.push_back(row);
        log.power_w.push_back(100.0);
        log.air_c.push_back(10.0);
    }
    for (const char* name : {"first", "second", "third"}) {
        log.probes.push_back({.name = name, .place = heatmatch::ProbePlace::wall});
        log.temperature_c.push_back(log.hours);
    }
    return log;
}

}  // namespace

TEST_CASE("a probe is frozen after twelve heated readings alike, whichever it is") {
    for (std::size_t probe = 0; probe < 3; ++probe) {
        CAPTURE(probe);
        const auto readings_with = [probe](std::size_t alike, std::size_t unheated) {
            StoreLog log = warming();
            auto& list = log.temperature_c[probe];
            std::fill(list.end() - static_cast<std::ptrdiff_t>(alike), list.end(), 77.0);
            std::fill(log.power_w.end() - static_cast<std::ptrdiff_t>(unheated), log.power_w.end(),
                      0.0);
            return checked_log(log).readings();
        };
        CHECK(readings_with(11, 0) == 3 * 40);
        CHECK(readings_with(12, 0) == 3 * 40 - 12);
        CHECK(readings_with(12, 1) == 3 * 40);
        CHECK(readings_with(13, 1) == 3 * 40 - 13);
        // One that failed at the end, or among those alike, hides nothing and counts for nothing.
        for (const std::size_t failed : {39U, 33U}) {
            StoreLog log = warming();
            auto& list = log.temperature_c[probe];
            std::fill(list.end() - 13, list.end(), 77.0);
            list[failed] = std::numeric_limits<double>::quiet_NaN();
            CHECK(checked_log(log).readings() == 3 * 40 - 13);
            list[26] = std::numeric_limits<double>::quiet_NaN();
            list[27] = 76.0;
            CHECK(checked_log(log).readings() == 3 * 40 - 2);
        }
        StoreLog log = warming();
        std::fill(log.temperature_c[probe].begin(), log.temperature_c[probe].end(), 21.0);
        const StoreLog stuck = checked_log(log);
        CHECK(stuck.readings() == 2 * 40);
        REQUIRE(stuck.remarks.size() == 1);
        CHECK(holds(stuck.remarks[0], '"' + log.probes[probe].name + '"'));
        CHECK(holds(stuck.remarks[0], "stays constant while the others change"));
        log.temperature_c.assign(3, std::vector<double>(40, 21.0));
        log.temperature_c[probe] = log.hours;
        CHECK(checked_log(log).readings() == 40);
    }
}
