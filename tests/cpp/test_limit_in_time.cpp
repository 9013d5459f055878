#include "store_bench.hpp"

#include <utility>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/limit_in_time.hpp"

using heatmatch::Answer;
using heatmatch::Circuit;
using heatmatch::limit_counts;
using heatmatch::limit_in_time;
using heatmatch::OtherBank;

namespace {

/// An insulated drum with two rods, and a limit in its bed that opens a contactor.
Circuit bed_limited(std::vector<OtherBank> others = {}) {
    heatmatch::Installation installation = drum();
    installation.store->side_u_w_m2k = 0.4;
    installation.store->top_u_w_m2k = 0.4;
    installation.store->bottom_u_w_m2k = 0.4;
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    heatmatch::PlacedDevice limit =
        bench_device("limit-controller-thermocouple", "senses only", 1, "");
    limit.device.set_c = 100.0;
    limit.device.set_tolerance_k = 5.0;
    limit.device.senses = heatmatch::SensedPlace::bed;
    limit.device.drives = {"dc-contactor-sealed-450-v"};
    circuit.devices = {limit, bench_device("dc-contactor-sealed-450-v", "breaks dc")};
    if (others.empty()) return circuit;
    auto store = std::make_shared<heatmatch::FilledStore>(*circuit.heat->store);
    store->others = std::move(others);
    circuit.heat = heatmatch::bank_heat(store, circuit.bank.element, circuit.bank.sheath,
                                        circuit.bank.alloy, 2);
    return circuit;
}

OtherBank one_rod(double element_w, bool limited) {
    return {.circuit = "other",
            .element = heatmatch::find_element(starter(), "storage-rod-1000-240"),
            .elements = 1,
            .element_w = element_w,
            .limited = limited};
}

/// Power at which alone the sheath is within its limit by day, and above it in a fortnight.
double between_days_w(const Circuit& circuit) {
    return 0.5 * (*circuit.heat->largest_element_w(false) + *circuit.heat->largest_element_w(true));
}

}  // namespace

TEST_CASE("a limit that acts in time alone also does beside a cold circuit that a limit opens") {
    const Circuit alone = bed_limited();
    const double element_w = between_days_w(alone);
    REQUIRE(limit_in_time(alone, alone.devices.front(), element_w).acts == Answer::yes);
    CHECK(heatmatch::unlimited_circuit(alone) == nullptr);
    const Circuit beside = bed_limited({one_rod(0.0, true)});
    CHECK(limit_in_time(beside, beside.devices.front(), element_w).acts == Answer::yes);
    CHECK(heatmatch::unlimited_circuit(beside) == nullptr);
    CHECK(limit_counts(beside, element_w));
}

TEST_CASE("another circuit that no limit opens takes the limit out of account") {
    const Circuit beside = bed_limited({one_rod(50.0, true), one_rod(50.0, false)});
    const OtherBank* without = heatmatch::unlimited_circuit(beside);
    REQUIRE(without != nullptr);
    CHECK(without->element_w == 50.0);
    CHECK_FALSE(without->limited);
    CHECK_FALSE(limit_counts(beside, between_days_w(bed_limited())));
    CHECK(heatmatch::unlimited_circuit(Circuit{}) == nullptr);
}

TEST_CASE("the heat of another circuit never lets a limit act in time that does not alone") {
    const auto rank_of = [](Answer answer) {
        return answer == Answer::yes ? 2 : (answer == Answer::unknown ? 1 : 0);
    };
    const double reference_w = between_days_w(bed_limited());
    for (const double share : {0.4, 0.8, 1.0, 1.3}) {
        const Circuit cold = bed_limited({one_rod(0.0, true)});
        const auto alone = limit_in_time(cold, cold.devices.front(), share * reference_w);
        for (const double other_w : {50.0, 200.0, 500.0}) {
            CAPTURE(share);
            CAPTURE(other_w);
            const Circuit hot = bed_limited({one_rod(other_w, true)});
            const auto beside = limit_in_time(hot, hot.devices.front(), share * reference_w);
            CHECK(rank_of(beside.acts) <= rank_of(alone.acts));
        }
    }
}
