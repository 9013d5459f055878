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
    house.site.albedo = 0.2;
    house.site.albedo_by_month.clear();
    house.site.linke_turbidity.assign(12, 3.0);
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
        CHECK(by_hour[i].remarks.back().text().find(
                  "circuits on other planes have the sun of that hour") != std::string::npos);
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

TEST_CASE("ground and air that are not stated never make a store cooler") {
    Installation unstated = facing_circuits(90.0, 270.0);
    unstated.weather.reset();
    unstated.site.albedo.reset();
    unstated.site.albedo_by_month.clear();
    unstated.site.linke_turbidity.clear();
    const auto of_unstated = heats_of(facing_assessed(unstated));
    for (const double albedo : {0.1, 0.2, 0.5, 0.8}) {
        for (const double turbidity : {2.0, 3.0, 5.0}) {
            CAPTURE(albedo);
            CAPTURE(turbidity);
            Installation stated = unstated;
            stated.site.albedo = albedo;
            stated.site.linke_turbidity.assign(12, turbidity);
            const auto of_stated = heats_of(facing_assessed(stated));
            for (std::size_t i = 0; i < 2; ++i) {
                CHECK(of_unstated[i].sheath_c >= of_stated[i].sheath_c - 1e-6);
                CHECK(of_unstated[i].stagnation_sheath_c >=
                      of_stated[i].stagnation_sheath_c - 1e-6);
            }
        }
    }
}

TEST_CASE("less that is stated of the planes never makes a store cooler") {
    Installation stated = facing_circuits(90.0, 270.0);
    stated.weather.reset();
    const auto known = heats_of(facing_assessed(stated));
    for (const int fact : {0, 1, 2, 3, 4}) {
        CAPTURE(fact);
        Installation less = stated;
        if (fact == 0) less.site.latitude_deg.reset();
        if (fact == 1) {
            less.panels[0].azimuth_deg.reset();
            less.panels[0].tilt_deg.reset();
        }
        if (fact == 2) less.goals.months.clear();
        if (fact == 3) less.panels[0].azimuth_deg.reset();
        if (fact == 4) less.panels[1].tilt_deg.reset();
        const auto unknown = heats_of(facing_assessed(less));
        for (std::size_t i = 0; i < known.size(); ++i) {
            CHECK(unknown[i].sheath_c >= known[i].sheath_c - 1e-6);
            CHECK(unknown[i].bed_mean_c >= known[i].bed_mean_c - 1e-6);
        }
    }
}
