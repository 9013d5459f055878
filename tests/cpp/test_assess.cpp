#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::assess;
using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Severity;

namespace {

std::string field_refused_by_assess(const Installation& installation) {
    try {
        static_cast<void>(assess(starter(), installation));
    } catch (const heatmatch::Error& error) {
        return error.detail().field;
    }
    return "nothing";
}

}  // namespace

// Source: the demo's two panels, aged by their readings, fitted and loaded by a separate program in
// Python (five equations solved by least squares, gamma by a difference, bracketed current):
// 154.475, 155.149 and 77.948 W at three suns; 89.906 V cold; 0.14496 ohm of wire; 28.550 ohm.
TEST_CASE("an assessment reports why the twelve months are not used") {
    heatmatch::Installation installation = demo();
    installation.site.tilt_deg.reset();
    const heatmatch::Candidate candidate = heatmatch::assess(starter(), installation);
    CHECK(!candidate.season);
    REQUIRE(candidate.remarks.size() == 1);
    CHECK(contains(candidate.remarks.front(), "the site lacks tilt_deg"));
    REQUIRE(heatmatch::assess(starter(), demo()).remarks.size() == 1);
    CHECK(contains(heatmatch::assess(starter(), demo()).remarks.front(),
                   "instead of the site's 1000 W/m2"));
}

TEST_CASE("the existing circuit of the demo delivers the power found by a separate program") {
    heatmatch::Installation installation = demo();
    installation.weather.reset();                       // margins at 1000 W/m2
    installation.runs.front().wire = "pv-cable-4-mm2";  // that program's
    const Candidate standing = assess(starter(), installation);
    CHECK(standing.circuit.title() == "barn pair 2S1P into storage-rod-1000-240 1S2P");
    REQUIRE(standing.delivered.size() == 3);
    CHECK(standing.delivered[0].power_w == doctest::Approx(154.475).epsilon(1e-5));
    CHECK(standing.delivered[1].power_w == doctest::Approx(155.149).epsilon(1e-5));
    CHECK(standing.delivered[2].power_w == doctest::Approx(77.948).epsilon(1e-5));
    CHECK(standing.circuit.cold_voltage_v() == doctest::Approx(89.906).epsilon(1e-5));
    CHECK(standing.circuit.wire_ohm() == doctest::Approx(0.14496).epsilon(1e-4));
    CHECK(standing.circuit.bank.typical_ohm() == doctest::Approx(28.550).epsilon(1e-5));
    // The same program, brightest cold morning, each element at its own worse end, wire at 0.145
    // ohm: 129.20 W, 81.777 V, 133.88 W for a survivor. With the wire at -32 °C (IEC 60028: 0.103
    // ohm) a root finder on its curve has 129.57 W, 81.879 V and 134.09 W.
    CHECK(*margin_of(standing.margins(), "element power").value ==
          doctest::Approx(129.566).epsilon(1e-4));
    CHECK(*margin_of(standing.margins(), "element voltage").value ==
          doctest::Approx(81.879).epsilon(1e-4));
    CHECK(*margin_of(standing.margins(), "survivor power").value ==
          doctest::Approx(134.090).epsilon(1e-4));
}

TEST_CASE("an existing circuit is assessed as the ranking assesses an equal one") {
    const Candidate standing = assess(starter(), demo());
    const auto& kept = demo_ranking().candidates;
    const auto same = std::find_if(kept.begin(), kept.end(), [&](const Candidate& candidate) {
        return candidate.circuit.title() == standing.circuit.title();
    });
    REQUIRE(same != kept.end());
    CHECK(same->mean_power_w() == standing.mean_power_w());
    CHECK(same->smallest_headroom() == standing.smallest_headroom());
    REQUIRE(same->margins().size() == standing.margins().size());
    for (std::size_t i = 0; i < standing.margins().size(); ++i) {
        CHECK(same->margins()[i].sentence() == standing.margins()[i].sentence());
    }
}

TEST_CASE("a circuit with a danger is assessed all the same") {
    Installation installation = demo();
    installation.devices.front().part = "ac-toggle-switch";
    const Candidate standing = assess(starter(), installation);
    CHECK(standing.severity() == Severity::danger);
    REQUIRE(standing.worst() != nullptr);
    CHECK(standing.worst()->name == "dc breaking");
    CHECK(standing.smallest_headroom() < 0.0);
    REQUIRE(standing.nearest_limit() != nullptr);
    CHECK(*standing.nearest_limit()->headroom == standing.smallest_headroom());
    CHECK(standing.nearest_limit()->consequence == Severity::danger);
}

TEST_CASE("elements of an existing circuit need not be bought") {
    Installation installation = demo();
    installation.circuit->bank = "2S2P";
    installation.runs.front().wire = "pv-wire-10-awg";
    installation.runs.front().owned_m = 18.0;
    const Candidate standing = assess(starter(), installation);
    REQUIRE(standing.price_to_buy);
    CHECK(*standing.price_to_buy == 0.0);
}

TEST_CASE("the conditions and the coil temperature are the caller's") {
    heatmatch::RankOptions options;
    options.conditions = {{500.0, 20.0}};
    options.coil_temperature_c = 600.0;
    const Candidate standing = assess(starter(), demo(), options);
    REQUIRE(standing.delivered.size() == 1);
    CHECK(standing.delivered.front().irradiance_w_m2 == 500.0);
    // At rated coil temperature the resistance is V²/P: 240² / 1000 / 2.
    CHECK(standing.circuit.bank.typical_ohm() == doctest::Approx(28.8).epsilon(1e-12));
}

TEST_CASE("an installation that cannot be assessed is refused by name") {
    Installation installation = demo();
    installation.circuit.reset();
    CHECK(field_refused_by_assess(installation) == "circuit");
    installation = demo();
    installation.circuit->panels = "3S1P";
    CHECK(field_refused_by_assess(installation) == "panels");
    installation.circuit->panels = "two";
    CHECK(field_refused_by_assess(installation) == "panels");
    installation = demo();
    installation.circuit->bank = "1S0P";
    CHECK(field_refused_by_assess(installation) == "bank");
    installation = demo();
    installation.circuit->group = "barn pairs";
    CHECK(field_refused_by_assess(installation) == "group");
    installation = demo();
    installation.circuit->element = "storage-rod";
    CHECK_THROWS_AS(static_cast<void>(assess(starter(), installation)), heatmatch::NotFound);
    CHECK(field_refused_by_assess(demo()) == "nothing");
}

TEST_CASE("conditions that mean nothing are refused for an assessment too") {
    heatmatch::RankOptions options;
    options.conditions = {{-5.0, 20.0}};
    CHECK_THROWS_AS(static_cast<void>(assess(starter(), demo(), options)), heatmatch::InvalidInput);
}
