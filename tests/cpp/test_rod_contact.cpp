#include "bed_examples.hpp"
#include "heat/rod_contact.hpp"
#include "store_bench.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/sheath_margins.hpp"

using namespace heatmatch;

namespace {

RodContact contact_of(const char* medium, const Store& store = {}, double radius_m = 0.004) {
    return rod_contact(find_medium(starter(), medium), store, rod_of(0.22, 2, 0.05), radius_m);
}

HeatPoint in_brick(std::optional<bool> packed) {
    Installation installation = drum();
    installation.store->rods_packed = packed;
    const Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2, "fire-brick");
    return circuit.heat->at(300.0);
}

}  // namespace

// Source: by hand from the equation in the header: d = 15 mm, 2s/d = 0.02/15, (1.00133 ln 751 - 1)
// = 5.630, 15/(3.2 x 5.630) = 0.833 mm.
TEST_CASE("stones touch a rod at points: an even gap of air resists as much") {
    CHECK(within(contact_of("dry-gravel").gap_m, 0.833e-3, 1e-3));
    CHECK(contact_of("crushed-basalt").gap_m > contact_of("dry-gravel").gap_m);
    for (const char* fine : {"dry-sand", "damp-sand", "sand-with-steel-turnings", "steel-shot"}) {
        CAPTURE(fine);
        CHECK(contact_of(fine).gap_m == 0.0);
        CHECK(contact_of(fine).assumed.empty());
    }
    // A quarter of the rod's diameter decides: shot of 1 mm is coarse for a rod of 3 mm.
    CHECK(contact_of("steel-shot", {}, 0.0015).gap_m > 0.0);
}

TEST_CASE("stones of unknown size count as large") {
    Medium gravel = find_medium(starter(), "dry-gravel");
    const auto gap = [&] { return rod_contact(gravel, {}, rod_of(0.22, 2, 0.05), 0.004); };
    const double told = gap().gap_m;
    gravel.stone_mm.reset();
    CHECK(gap().gap_m > told);
    CHECK(gap().assumed.front().field == "stone_mm");
    const double unmeasured = gap().gap_m;
    gravel.grain_mm.reset();
    CHECK(gap().gap_m >= unmeasured);
    gravel.stone_mm = 60.0;
    CHECK(gap().gap_m > told);
}

// Source: 0.2 mm of clearance open, 0.05 mm left of it where it is packed; both from memory.
TEST_CASE("a groove in brick that is packed leaves less air than an open one") {
    Store store;
    const double open = contact_of("fire-brick", store).gap_m;
    CHECK(open == doctest::Approx(0.2e-3));
    store.rods_packed = false;
    CHECK(contact_of("fire-brick", store).gap_m == open);
    store.rods_packed = true;
    CHECK(contact_of("fire-brick", store).gap_m == doctest::Approx(0.05e-3));
    const HeatPoint unknown = in_brick(std::nullopt);
    const HeatPoint packed = in_brick(true);
    CHECK(unknown.sheath_c == in_brick(false).sheath_c);
    CHECK(packed.sheath_c < unknown.sheath_c);
    CHECK(packed.gap_k > 0.0);
    CHECK(packed.gap_k < 0.5 * unknown.gap_k);
}

TEST_CASE("a sheath among stones has the rise across the air at its surface") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2, "dry-gravel");
    const HeatPoint point = *heat_of(circuit, {.element_power_w = 150.0});
    CHECK(point.gap_k > 3.0);
    const auto said = [&](const Circuit& of) {
        const auto margins = sheath_margins_in_use(of, heat_of(of, {.element_power_w = 150.0}));
        for (const Margin& margin : margins) {
            if (margin.name == "sheath temperature") return margin.sentence();
        }
        return std::string();
    };
    CHECK(contains(said(circuit), "is from air between rod and fill"));
    const Circuit sand = circuit_in(drum(), "storage-rod-1000-240", 2);
    CHECK_FALSE(contains(said(sand), "is from air between rod and fill"));
}
