#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/bank_heat.hpp"

using heatmatch::BankHeat;
using heatmatch::HeatPoint;

namespace {

std::shared_ptr<const BankHeat> heat_of_rods(int count,
                                             const heatmatch::Installation& installation) {
    return circuit_in(installation, "storage-rod-1000-240", count).heat;
}

}  // namespace

// From memory, soil-warming practice: 10 to 20 W a metre, and the bed stays damp; 30 W a metre of
// 2.9 m are 43.5 W an element.
TEST_CASE("a bed filled damp is assessed as damp up to 30 W per meter") {
    heatmatch::Installation installation = drum();
    CHECK_FALSE(heat_of_rods(2, installation)->damp_at(10.0));
    installation.store->moist = true;
    const auto heat = heat_of_rods(2, installation);
    REQUIRE(heat->damp_at(43.4));
    CHECK_FALSE(heat->damp_at(43.6));
    CHECK(heat->damp_at(40.0)->sheath_c < heat->at(40.0).sheath_c);
    CHECK(heat->damp_at(40.0)->stagnation_sheath_c < heat->at(40.0).stagnation_sheath_c);
    CHECK(heat->judged_at(40.0).sheath_c == heat->damp_at(40.0)->sheath_c);
    CHECK(heat->judged_at(50.0).sheath_c == doctest::Approx(heat->at(50.0).sheath_c));
}

TEST_CASE("values for a verdict use the worst end of uncertain fill properties") {
    const HeatPoint point = heat_of_rods(2, drum())->at(200.0);
    CHECK(point.sheath_band.low_c < point.sheath_band.typical_c);
    CHECK(point.sheath_band.typical_c < point.sheath_band.high_c);
    // The rise over the air of 25 °C counts 1.10 times.
    CHECK(point.sheath_c == doctest::Approx(25.0 + 1.10 * (point.sheath_band.high_c - 25.0)));
    CHECK(point.coil_c > point.sheath_c);
    CHECK(point.stagnation_sheath_c > point.sheath_c);
    CHECK(point.stagnation_wall_c > point.wall_c);
    CHECK(point.wall_c > 25.0);
    CHECK(point.w_per_cm == doctest::Approx(200.0 / 145.0));
}

TEST_CASE("legs that do not fit at their stated height are judged under the lid, which is listed") {
    heatmatch::Installation installation = drum(0.57, 0.80);
    installation.store->element_height_mm = 60.0;
    const auto listed = [](const BankHeat& heat) {
        return std::find_if(heat.assumed.begin(), heat.assumed.end(),
                            [](const auto& one) { return one.field == "element_height_mm"; });
    };
    const auto fits = heat_of_rods(2, installation);
    CHECK(listed(*fits) == fits->assumed.end());
    installation.store->element_height_mm = 90.0;
    const auto moved = heat_of_rods(2, installation);
    REQUIRE(listed(*moved) != moved->assumed.end());
    CHECK(listed(*moved)->value.text() == "55 mm");
}

TEST_CASE("the values of the screen equal those of the margins") {
    const auto heat = heat_of_rods(3, drum());
    for (const double watts : {10.0, 100.0, 400.0}) {
        const HeatPoint point = heat->at(watts);
        const BankHeat::Judged judged = heat->judged_at(watts);
        CHECK(judged.sheath_c == point.sheath_c);
        CHECK(judged.coil_c == point.coil_c);
        CHECK(judged.stagnation_sheath_c == point.stagnation_sheath_c);
    }
}

TEST_CASE("the largest power is where the limit is reached") {
    const auto heat = heat_of_rods(2, drum());
    const double by_day = *heat->largest_element_w(false);
    CHECK(heat->judged_at(by_day).sheath_c == doctest::Approx(760.0).epsilon(1e-6));
    const double by_fortnight = *heat->largest_element_w(true);
    CHECK(by_fortnight <= by_day);
    CHECK(heat->judged_at(by_fortnight).stagnation_sheath_c ==
          doctest::Approx(760.0).epsilon(1e-6));
}

TEST_CASE("adjacent elements permit less power than one alone, more when farther apart") {
    heatmatch::Installation installation = drum();
    const double alone = *heat_of_rods(1, installation)->largest_element_w(false);
    installation.store->element_spacing_mm = 40.0;
    const double close = *heat_of_rods(2, installation)->largest_element_w(false);
    installation.store->element_spacing_mm = 120.0;
    const double apart = *heat_of_rods(2, installation)->largest_element_w(false);
    CHECK(close < apart);
    CHECK(apart < alone);
}

// Common practice, no source: several rods at a fifth of their rating each beat one at its rating.
TEST_CASE("several elements may have a power that one of them may not") {
    const heatmatch::Installation installation = drum();
    const double one = *heat_of_rods(1, installation)->largest_element_w(true);
    const double four = *heat_of_rods(4, installation)->largest_element_w(true);
    CHECK(one < 600.0);
    CHECK(4.0 * four > 1.5 * one);
}

TEST_CASE("water has no shell of sand and never exceeds its boiling point") {
    heatmatch::Installation installation = drum();
    const auto heat = circuit_in(installation, "immersion-4500-240", 1, "water").heat;
    CHECK(heat->liquid);
    const HeatPoint weak = heat->at(100.0);
    CHECK_FALSE(weak.boils);
    CHECK(weak.sheath_c < 100.0);
    const HeatPoint strong = heat->at(4500.0);
    CHECK(strong.boils);
    CHECK(strong.bed_mean_c <= 100.0);
    CHECK(strong.sheath_c < 150.0);
}

TEST_CASE("nothing is computed without sizes, lengths or a store") {
    heatmatch::Installation unsized = drum();
    unsized.store->diameter_m.reset();
    CHECK(heat_of_rods(2, unsized)->missing == std::vector<std::string>{"diameter_m"});
    CHECK_FALSE(heat_of_rods(2, unsized)->known());
    CHECK_FALSE(heat_of_rods(2, unsized)->largest_element_w(true));
    CHECK(heatmatch::bank_heat(nullptr, {}, std::nullopt, std::nullopt, 1) == nullptr);
}

// Source: the definition: three bright days in the season's air, fourteen in the hottest.
TEST_CASE("use is judged in the season's air and stagnation in the hottest, sand and water alike") {
    heatmatch::Installation installation = drum();
    installation.store->air_c = 5.0;
    installation.store->moist = true;
    const auto sand = heat_of_rods(2, installation);
    for (const auto* charge :
         {&sand->careful, &sand->likely, &sand->conducting, &*sand->moist, &*sand->moist_careful}) {
        CHECK(charge->air_c == 5.0);
        CHECK(charge->days == 3.0);
    }
    for (const auto* charge : {&sand->stagnant, &sand->stagnant_out, &*sand->moist_stagnant}) {
        CHECK(charge->air_c == 37.0);
        CHECK(charge->days == 14.0);
    }
    const auto water = circuit_in(installation, "immersion-4500-240", 1, "water").heat;
    const auto by_hand = [&](double air_c, double days) {
        return heatmatch::sheath_temperature(
            water->store->medium, water->store->store, water->element, 1,
            {.power_w = 40.0, .hours = water->store->charge_hours, .air_c = air_c, .days = days});
    };
    const HeatPoint point = water->at(40.0);
    CHECK(point.sheath_c == by_hand(5.0, 3.0).sheath_verdict_c);
    CHECK(point.wall_c == by_hand(5.0, 3.0).wall_c.high_c);
    CHECK(point.lid_c == by_hand(5.0, 3.0).lid_c.high_c);
    CHECK(point.inner_c == by_hand(5.0, 3.0).bed_mean_c.high_c);
    CHECK(point.stagnation_sheath_c == by_hand(37.0, 14.0).sheath_verdict_c);
    CHECK(point.stagnation_wall_c == by_hand(37.0, 14.0).wall_c.high_c);
    CHECK(point.stagnation_inner_c == by_hand(37.0, 14.0).bed_mean_c.high_c);
    CHECK(point.stagnation_inner_c > point.inner_c + 5.0);
}

// Source: the definition of the worst: until it dries a damp bed counts beside the three dry ones.
TEST_CASE("every surface has the hottest of three conductivities and of the damp bed") {
    int damp_is_hottest = 0;
    int dry_is_hottest = 0;
    for (const double side_u : {0.3, 5.0, 40.0}) {
        for (const bool damp : {false, true}) {
            const double element_w = 150.0;
            heatmatch::Installation installation = drum(0.40, 0.85);
            installation.store->moist = damp;
            installation.store->side_u_w_m2k = side_u;
            installation.store->top_u_w_m2k = 10.0;
            installation.store->bottom_u_w_m2k = 10.0;
            const auto heat = heat_of_rods(1, installation);
            const HeatPoint point = heat->at(element_w);
            std::vector<heatmatch::BedTemperatures> all;
            for (const auto* charge : {&heat->careful, &heat->likely, &heat->conducting}) {
                all.push_back(heatmatch::bed_temperatures(*charge, element_w));
            }
            if (damp) all.push_back(heatmatch::bed_temperatures(*heat->moist, element_w));
            const auto hottest = [&all](double heatmatch::BedTemperatures::*member) {
                double most = -1e9;
                for (const auto& one : all) most = std::max(most, one.*member);
                return most;
            };
            using heatmatch::BedTemperatures;
            CHECK(point.wall_c == hottest(&BedTemperatures::wall_c));
            CHECK(point.lid_c == hottest(&BedTemperatures::lid_c));
            CHECK(point.inner_c == hottest(&BedTemperatures::inner_c));
            CHECK(point.stagnation_inner_c >= point.inner_c);
            if (!damp) continue;
            damp_is_hottest += all.back().wall_c == point.wall_c ? 1 : 0;
            dry_is_hottest += all.back().inner_c < point.inner_c ? 1 : 0;
            dry_is_hottest += all.back().lid_c < point.lid_c ? 1 : 0;
        }
    }
    CHECK(damp_is_hottest > 0);
    CHECK(dry_is_hottest > 0);
}

namespace {

/// Every temperature of a point.
std::vector<double> temperatures_of(const HeatPoint& point) {
    return {point.sheath_c,
            point.coil_c,
            point.void_c,
            point.bed_mean_c,
            point.wall_c,
            point.lid_c,
            point.floor_c,
            point.inner_c,
            point.stagnation_sheath_c,
            point.stagnation_least_c,
            point.stagnation_wall_c,
            point.stagnation_inner_c,
            point.stagnation_lid_c,
            point.stagnation_floor_c,
            point.stagnation_bottom_c};
}

/// One rod of the demo's store beside some rods of another circuit.
std::shared_ptr<const BankHeat> rod_beside(const heatmatch::Installation& installation,
                                           const char* other, int count, double other_w,
                                           const heatmatch::UnstatedPlaces& unstated = {}) {
    const heatmatch::Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 1);
    auto store = std::make_shared<heatmatch::FilledStore>(*circuit.heat->store);
    store->unstated = unstated;
    store->others = {{.circuit = "other",
                      .element = heatmatch::find_element(starter(), other),
                      .elements = count,
                      .element_w = other_w}};
    return heatmatch::bank_heat(store, circuit.bank.element, circuit.bank.sheath,
                                circuit.bank.alloy, 1);
}

}  // namespace

TEST_CASE("more power in another circuit makes no part of a store colder") {
    for (const char* medium : {"dry-sand", "dry-gravel", "water"}) {
        heatmatch::Installation installation = drum();
        installation.store->medium = medium;
        for (const char* other : {"storage-rod-1000-240", "tubular-1000-120"}) {
            for (const bool known : {true, false}) {
                CAPTURE(medium);
                CAPTURE(other);
                CAPTURE(known);
                const heatmatch::UnstatedPlaces unstated{
                    .height = !known, .aside = !known, .way = !known};
                std::vector<double> before;
                for (const double other_w : {0.0, 30.0, 120.0, 300.0}) {
                    const auto heat = rod_beside(installation, other, 2, other_w, unstated);
                    REQUIRE(heat->known());
                    const auto now = temperatures_of(heat->at(100.0));
                    constexpr double rounding_k = 1e-3;
                    for (std::size_t i = 0; i < before.size(); ++i) {
                        CAPTURE(i);
                        CAPTURE(other_w);
                        CHECK(now[i] > before[i] - rounding_k);
                    }
                    before = now;
                }
            }
        }
    }
}

TEST_CASE("a store without the power of other circuits is as if they lay cold in it") {
    const auto cold = rod_beside(drum(), "tubular-1000-120", 2, 0.0);
    const auto hot = rod_beside(drum(), "tubular-1000-120", 2, 200.0);
    const HeatPoint alone = hot->without_others().at(100.0);
    const HeatPoint beside = cold->at(100.0);
    CHECK(alone.sheath_c == doctest::Approx(beside.sheath_c).epsilon(0.005));
    CHECK(alone.bed_mean_c == doctest::Approx(beside.bed_mean_c).epsilon(0.02));
    CHECK(hot->at(100.0).sheath_c > beside.sheath_c + 5.0);
    CHECK(*hot->largest_element_w(true) < *cold->largest_element_w(true));
    // What the others alone make too hot leaves no power.
    CHECK(*rod_beside(drum(), "tubular-1000-120", 4, 3000.0)->largest_element_w(true) == 0.0);
}

TEST_CASE("lengths that another circuit lacks are missing here too") {
    const heatmatch::Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 1);
    auto store = std::make_shared<heatmatch::FilledStore>(*circuit.heat->store);
    heatmatch::Element unknown = circuit.bank.element;
    unknown.heated_length_mm.reset();
    store->others = {{.circuit = "other", .element = unknown, .elements = 1, .element_w = 50.0}};
    const auto heat = heatmatch::bank_heat(store, circuit.bank.element, circuit.bank.sheath, {}, 1);
    CHECK_FALSE(heat->known());
    REQUIRE(heat->missing.size() == 1);
    CHECK(heat->missing.front() == "heated_length_mm of circuit \"other\"");
}
