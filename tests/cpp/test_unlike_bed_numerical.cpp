#include "bed_3d.hpp"
#include "dice.hpp"
#include "figure.hpp"
#include "long_run.hpp"
#include "unlike_circuits.hpp"

#include <algorithm>
#include <limits>
#include <memory>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"

// Unlike elements of one bank in a bed against solutions in three dimensions.
TEST_SUITE_BEGIN("numerical");

namespace {

/// A bank of three rods side by side, the outer ones equal: a quarter of it is enough.
heatmatch::Circuit three_in_a_drum(Dice& dice, double cell_m) {
    heatmatch::Element rod = bench_rod("outer", 20.0, 2000.0 * dice.between(0.22, 0.34));
    rod.legs = 2;
    rod.leg_spacing_mm = 2000.0 * cell_m * dice.from(4, 5);  // wider than two lines: one column
    rod.sheath_diameter_mm = dice.between(8.0, 12.0);
    heatmatch::Element middle = rod;
    middle.id = "middle";
    middle.measured_resistance_ohm = dice.between(5.0, 60.0);
    heatmatch::Circuit circuit;
    std::vector<heatmatch::Bank> elements;
    for (const heatmatch::Element& each : {rod, middle, rod}) {
        elements.push_back(heatmatch::make_bank(starter(), each, {}, 1, 300.0));
    }
    circuit.bank = heatmatch::bank_of(
        heatmatch::BankTree::parse("outer | middle | outer", "circuit", "elements"),
        std::move(elements));
    auto store = std::make_shared<heatmatch::FilledStore>();
    store->medium = heatmatch::find_medium(starter(), "dry-sand");
    store->store.medium = "dry-sand";
    store->store.shape = heatmatch::StoreShape::cylinder;
    store->store.diameter_m = dice.between(0.4, 0.6);
    store->store.height_m = dice.between(0.4, 0.6);
    store->store.wall_emissivity = 0.3;
    store->store.element_spacing_mm = 1000.0 * cell_m * dice.from(4, 5);
    store->charge_hours = dice.between(2.0, 7.0);
    circuit.heat = heatmatch::bank_heat(std::move(store), circuit.bank);
    return circuit;
}

}  // namespace

// Source: the solver of bed_3d.hpp, measured against exact solutions in test_bed_3d.cpp.
TEST_CASE("the verdict factor covers every unlike element in random drums") {
    Dice dice(20261203U);
    double least = std::numeric_limits<double>::infinity();
    double most = -std::numeric_limits<double>::infinity();
    const int count = in_the_long_run() ? 30 : 6;
    for (int i = 0; i < count; ++i) {
        CAPTURE(i);
        const double cell_m = dice.between(0.010, 0.013);
        const heatmatch::Circuit circuit = three_in_a_drum(dice, cell_m);
        REQUIRE(circuit.heat->known());
        const double outer_w = dice.between(20.0, 120.0);
        const std::vector<double> element_w{outer_w, dice.between(20.0, 200.0), outer_w};
        std::vector<heatmatch::BedCharge> charges;
        Bed3dStore whole;
        for (std::size_t k = 0; k < element_w.size(); ++k) {
            heatmatch::BedCharge charge =
                heatmatch::element_view(circuit, k, element_w).heat->careful;
            charge.days = 1.0;
            if (k == 0) {
                whole = {.fill = charge.fill,
                         .shell = charge.shell,
                         .legs = charge.legs,
                         .air_c = charge.air_c,
                         .start_c = charge.air_c};
            } else {
                whole.legs.legs.insert(whole.legs.legs.end(), charge.legs.legs.begin(),
                                       charge.legs.legs.end());
            }
            charges.push_back(std::move(charge));
        }
        const double mean_w = (2.0 * outer_w + element_w[1]) / 3.0;
        for (const double each : element_w)
            whole.weights.insert(whole.weights.end(), 2, each / mean_w);
        Bed3d bed(whole, {.near_m = cell_m, .high_m = 0.03});
        bed.run(3.0 * mean_w, charges.front().hours * 3600.0);
        for (std::size_t k = 0; k < element_w.size(); ++k) {
            const double air_c = charges[k].air_c;
            const std::size_t shown = k == 0 ? 2 : k;  // the quarter has one of the outer rods
            const double ours_k = heatmatch::sheath_only_c(charges[k], element_w[k]) - air_c;
            const double exact_k = bed.sheath_c(2 * shown, 2 * shown + 2) - air_c;
            CAPTURE(k);
            CAPTURE(ours_k);
            CAPTURE(exact_k);
            CHECK(heatmatch::verdict_factor * ours_k > exact_k);
            CHECK(ours_k < 1.15 * exact_k);
            least = std::min(least, 100.0 * (ours_k / exact_k - 1.0));
            most = std::max(most, 100.0 * (ours_k / exact_k - 1.0));
        }
    }
    figure("three unlike rods, three dimensions: sheath ", least, " to ", most, " %");
}

TEST_SUITE_END();
