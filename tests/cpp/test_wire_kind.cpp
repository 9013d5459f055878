#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/parts/wire_kind.hpp"

using heatmatch::places_of;
using heatmatch::Wire;
using heatmatch::wire_kind;
using heatmatch::WireKind;

namespace {

WireKind kind_marked(const char* marking) {
    return wire_kind(Wire{.marking = marking}, nullptr);
}

}  // namespace

// Source: NEC 310.10, 338.12, 690.31 (nec-310-10, nec-338-12, nec-690-31): what letters allow.
TEST_CASE("type letters determine the kind of a wire, the widest use of several counts") {
    CHECK(kind_marked("THHN") == WireKind::dry_building);
    CHECK(kind_marked("THHN/THWN-2") == WireKind::building);
    CHECK(kind_marked("USE-2") == WireKind::service);
    CHECK(kind_marked("USE-2 / RHH / RHW-2") == WireKind::building);
    CHECK(kind_marked("PV WIRE, UL 4703") == WireKind::pv_wire);
    CHECK(kind_marked("pv wire or USE-2") == WireKind::pv_wire);
    CHECK(kind_marked("H1Z2Z2-K, EN 50618") == WireKind::pv_cable);
    CHECK(kind_marked("NM-B 12/2") == WireKind::indoor_cable);
    CHECK(kind_marked("UF-B 10/2") == WireKind::feeder_cable);
    CHECK(kind_marked("SJOOW 12/2") == WireKind::cord);
    CHECK(kind_marked("class K") == WireKind::welding);
    CHECK(kind_marked("538 °C class") == WireKind::unknown);
    CHECK(kind_marked("welding cable, RHW-2") == WireKind::building);
    CHECK(kind_marked("UL 758, 105 °C, 600 V") == WireKind::appliance);
    CHECK(kind_marked("") == WireKind::unknown);
    CHECK(kind_marked("blue") == WireKind::unknown);
}

TEST_CASE("every wire of the starter has a kind") {
    for (const Wire& wire : starter().wires) {
        CAPTURE(wire.id);
        const auto& insulation = heatmatch::find_insulation(starter(), wire.insulation);
        CHECK(wire_kind(wire, &insulation) != WireKind::unknown);
    }
}

// Source: NEC 400.12 and 300.3(A) (nec-400-12, nec-300-3); a listing guide (welding-cable-use).
TEST_CASE("cords and welding cable are permitted nowhere, loose building wire in raceways only") {
    for (const WireKind kind : {WireKind::cord, WireKind::welding, WireKind::vehicle}) {
        CHECK_FALSE(places_of(kind).raceway);
        CHECK_FALSE(places_of(kind).open);
        CHECK_FALSE(places_of(kind).cavity);
        CHECK_FALSE(places_of(kind).element);
    }
    CHECK(places_of(WireKind::building).raceway);
    CHECK_FALSE(places_of(WireKind::building).open);
    CHECK(places_of(WireKind::pv_wire).open);
    CHECK(places_of(WireKind::hot_lead).element);
    CHECK_FALSE(places_of(WireKind::hot_lead).raceway);
}

TEST_CASE("every kind has its own places and a source for them") {
    for (std::size_t i = 0; i < heatmatch::wire_kind_words.size(); ++i) {
        const auto kind = static_cast<WireKind>(i);
        CHECK(places_of(kind).kind == kind);
        CHECK_FALSE(places_of(kind).source.empty());
    }
}
