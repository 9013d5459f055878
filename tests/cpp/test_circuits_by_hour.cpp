#include "two_circuits.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using heatmatch::assess_circuits;
using heatmatch::Candidate;
using heatmatch::Installation;

namespace {

/// Two circuits whose panels face these directions.
Installation facing_circuits(double first_deg, double second_deg) {
    Installation house = two_circuits();
    // No device and no wire: heat alone is compared.
    house.runs.clear();
    house.devices.clear();
    for (auto& owned : house.panels) {
        owned.rear_blocked = true;
        owned.tilt_deg = 60.0;
        owned.azimuth_deg = owned.group == "porch four" ? second_deg : first_deg;
    }
    house.goals.months = {12, 1};
    house.store->charge_hours = 6.0;
    return house;
}

std::vector<Candidate> facing_assessed(const Installation& house) {
    return assess_circuits(starter(), house, {.memory = nullptr});
}

std::vector<heatmatch::HeatPoint> heats_of(const std::vector<Candidate>& circuits) {
    std::vector<heatmatch::HeatPoint> heats;
    for (const Candidate& each : circuits) {
        heats.push_back(each.circuit.heat->at(each.bright.element_power_w));
    }
    return heats;
}

bool tells_full_sun(const Candidate& candidate) {
    const auto& assumed = candidate.circuit.heat->assumed;
    return std::any_of(assumed.begin(), assumed.end(), [](const heatmatch::Assumption& one) {
        return one.value.text() == "all planes in full sun at once";
    });
}

}  // namespace

TEST_CASE("circuits on the same plane are judged at full power at once") {
    const auto circuits = facing_assessed(facing_circuits(180.0, 180.0));
    for (const Candidate& each : circuits) {
        CHECK(!each.circuit.heat->store->by_hour());
        CHECK(each.circuit.heat->careful.moments.empty());
        CHECK(each.circuit.heat->careful.others.front().day_share == 1.0);
        CHECK(!tells_full_sun(each));
        CHECK(each.remarks.back().text() ==
              "The store is judged with all 2 circuits at their largest power at the same time.");
    }
}

TEST_CASE("circuits that face east and west are judged by the hour, and never below each alone") {
    const Installation apart = facing_circuits(90.0, 270.0);
    Installation unknown = apart;
    unknown.site.latitude_deg.reset();
    unknown.weather.reset();
    Installation known = apart;
    known.weather.reset();
    const auto by_hour = facing_assessed(known);
    const auto at_once = facing_assessed(unknown);
    const auto of_hour = heats_of(by_hour);
    const auto of_once = heats_of(at_once);
    for (std::size_t i = 0; i < 2; ++i) {
        Installation single = known;
        single.circuits = {known.circuits[i]};
        const auto alone = heats_of(facing_assessed(single)).front();
        CHECK(by_hour[i].bright.element_power_w == at_once[i].bright.element_power_w);
        CHECK(of_hour[i].sheath_c < of_once[i].sheath_c - 0.2);
        CHECK(of_hour[i].wall_c < of_once[i].wall_c + 0.01);
        CHECK(of_hour[i].bed_mean_c <= of_once[i].bed_mean_c);
        CHECK(of_hour[i].sheath_c > alone.sheath_c);
        CHECK(of_hour[i].wall_c > alone.wall_c);
        CHECK(of_hour[i].stagnation_sheath_c <= of_once[i].stagnation_sheath_c);
        CHECK(of_hour[i].stagnation_sheath_c > alone.stagnation_sheath_c);
        CHECK(!tells_full_sun(by_hour[i]));
        CHECK(tells_full_sun(at_once[i]));
        CHECK(by_hour[i].remarks.back().text().find("on other planes with the sun of that hour") !=
              std::string::npos);
    }
}

TEST_CASE("a store of water has the heat of the day of every circuit") {
    Installation house = facing_circuits(90.0, 270.0);
    house.store->medium = "water";
    house.store->element_spacing_mm.reset();
    Installation south = facing_circuits(180.0, 180.0);
    south.store = house.store;
    const auto by_hour = heats_of(facing_assessed(house));
    const auto at_once = heats_of(facing_assessed(south));
    Installation single = house;
    single.circuits.resize(1);
    const auto alone = heats_of(facing_assessed(single)).front();
    CHECK(by_hour.front().bed_mean_c > alone.bed_mean_c);
    CHECK(by_hour.front().bed_mean_c < at_once.front().bed_mean_c);
}

TEST_CASE("less that is stated of the planes never improves a verdict") {
    const Installation stated = facing_circuits(90.0, 270.0);
    const auto known = facing_assessed(stated);
    for (const int fact : {0, 1, 2, 3, 4}) {
        CAPTURE(fact);
        Installation less = stated;
        if (fact == 0) less.site.latitude_deg.reset();
        if (fact == 1) less.site.azimuth_deg.reset();
        if (fact == 2) less.site.tilt_deg.reset();
        if (fact == 3) less.panels[0].azimuth_deg.reset();
        if (fact == 4) less.panels[1].tilt_deg.reset();
        if (fact < 3) {
            // Only the plane of the sun is asked for: one of the site's serves where a group has
            // none.
            less.weather.reset();
        }
        const auto unknown = facing_assessed(less);
        for (std::size_t i = 0; i < known.size(); ++i) {
            if (fact < 3) continue;
            CHECK(unknown[i].worst_severity() >= known[i].worst_severity());
        }
    }
}
