#include "unlike_yard.hpp"

#include <cmath>

#include "heatmatch/answer/first_screen.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/unlike_array.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Margin;

namespace {

/// The barn pair listed as two groups of one panel each: the same panels, but several groups.
Installation split_pair(const std::string& array) {
    Installation house = unlike_yard(array);
    heatmatch::OwnedPanels half = house.panels.front();
    half.count = 2;
    half.group = "left";
    house.panels.push_back(half);
    half.group = "right";
    house.panels.push_back(half);
    return house;
}

Installation pair_of_one_group(const char* panels) {
    Installation house = split_pair("");
    house.panels.front().count = 4;
    house.circuit = {
        .group = "barn pair", .panels = panels, .element = "storage-rod-1000-240", .bank = "1S2P"};
    return house;
}

Candidate assessed(const Installation& house) {
    return heatmatch::assess(starter(), house);
}

/// The message of an array that is refused.
std::string refused(const std::string& array) {
    try {
        static_cast<void>(array_candidate(array));
    } catch (const heatmatch::Error& error) {
        return error.what();
    }
    return "nothing";
}

}  // namespace

TEST_CASE("an array of one group in equal strings is the uniform array, bit for bit") {
    Installation text = pair_of_one_group("2S2P");
    text.circuit->group.clear();
    text.circuit->panels.clear();
    text.circuit->array = "barn pair x2 | barn pair + barn pair";
    const Candidate as_text = assessed(text);
    const Candidate as_hookup = assessed(pair_of_one_group("2S2P"));
    REQUIRE(as_text.circuit.unlike == nullptr);
    CHECK(as_text.season->kwh == as_hookup.season->kwh);
    REQUIRE(as_text.margins().size() == as_hookup.margins().size());
    for (std::size_t i = 0; i < as_text.margins().size(); ++i) {
        CHECK(as_text.margins()[i].headroom == as_hookup.margins()[i].headroom);
        CHECK(as_text.margins()[i].sentence() == as_hookup.margins()[i].sentence());
    }
}

TEST_CASE("equal panels listed as several groups reduce to the uniform array") {
    struct Same {
        const char* array;
        const char* panels;
    };
    for (const Same& same : {Same{"left + right", "2S1P"}, Same{"left | right", "1S2P"},
                             Same{"left x2 | right x2", "2S2P"}}) {
        CAPTURE(std::string(same.array));
        const Candidate split = assessed(split_pair(same.array));
        const Candidate whole = assessed(pair_of_one_group(same.panels));
        REQUIRE(split.circuit.unlike != nullptr);
        const auto near = [](double value, double exact) {
            return std::fabs(value - exact) <= 1e-12 * std::fabs(exact);
        };
        CHECK(near(split.circuit.cold_voltage_v(), whole.circuit.cold_voltage_v()));
        CHECK(
            near(split.circuit.short_circuit_current_a(), whole.circuit.short_circuit_current_a()));
        CHECK(near(split.circuit.wire_ohm(), whole.circuit.wire_ohm()));
        for (std::size_t i = 0; i < whole.delivered.size(); ++i) {
            CHECK(split.delivered[i].power_w ==
                  doctest::Approx(whole.delivered[i].power_w).epsilon(1e-11));
            CHECK(split.delivered[i].power_low_w ==
                  doctest::Approx(whole.delivered[i].power_low_w).epsilon(1e-11));
            CHECK(split.delivered[i].maximum_power_w ==
                  doctest::Approx(whole.delivered[i].maximum_power_w).epsilon(1e-11));
        }
        // One curve is of a panel, the other of the array: both to 1e-4 of the sum.
        CHECK(split.season->kwh == doctest::Approx(whole.season->kwh).epsilon(3e-4));
        CHECK(split.season->mpp_kwh == doctest::Approx(whole.season->mpp_kwh).epsilon(1e-3));
        for (const Margin& margin : whole.margins()) {
            if (margin.name == "string mismatch" || !margin.headroom) continue;
            const std::string subject = margin.subject.rfind("group ", 0) == 0
                                            ? split.circuit.array_subject()
                                            : margin.subject;
            CAPTURE(margin.name);
            const Margin same_margin = margin_of(split.margins(), margin.name, subject);
            REQUIRE(same_margin.headroom.has_value());
            CHECK(*same_margin.headroom == doctest::Approx(*margin.headroom).epsilon(1e-6));
            CHECK(same_margin.severity == margin.severity);
            CHECK(same_margin.worst_severity == margin.worst_severity);
        }
    }
}

TEST_CASE("cold volts are the sum of each panel's own, and the strongest string counts") {
    const Candidate candidate = array_candidate("barn pair x2 + porch four | porch four x3");
    const auto cold_of = [](const char* group) {
        const Installation house = demo();
        const heatmatch::OwnedPanels& owned = heatmatch::find_group(house, group);
        return heatmatch::panel_in_service(owned, heatmatch::find_panel(starter(), owned.panel),
                                           house.site.record_low_c)
            .cold.v_oc;
    };
    const double first = 2.0 * cold_of("barn pair") + cold_of("porch four");
    const double second = 3.0 * cold_of("porch four");
    CHECK(candidate.circuit.unlike->cold_voltage_v(0) == doctest::Approx(first).epsilon(1e-14));
    CHECK(candidate.circuit.unlike->cold_voltage_v(1) == doctest::Approx(second).epsilon(1e-14));
    CHECK(candidate.circuit.cold_voltage_v() == doctest::Approx(first).epsilon(1e-14));
    for (const char* panel : {"silicon-60-cell-245", "silicon-36-cell-135"}) {
        CHECK(margin_of(candidate.margins(), "cold voltage", panel).value ==
              candidate.circuit.cold_voltage_v());
    }
}

TEST_CASE("the strongest panel's current passes the others, and strings feed each other") {
    const heatmatch::Circuit circuit =
        array_candidate("barn pair | porch four + porch four | thin pair").circuit;
    const heatmatch::UnlikeArray& array = *circuit.unlike;
    const double barn = array.panel(0).bright_isc_a();
    const double porch = array.panel(1).bright_isc_a();
    const double thin = array.panel(2).bright_isc_a();
    CHECK(circuit.short_circuit_current_a() == doctest::Approx(barn + porch + thin));
    CHECK(circuit.fed_current_a() ==
          doctest::Approx(barn + porch + thin - std::min({barn, porch, thin})));
    CHECK(circuit.surely_fed_a() <= circuit.fed_current_a());
    CHECK(circuit.panel_count() == 4);
    CHECK(circuit.title() ==
          "barn pair | porch four + porch four | thin pair into storage-rod-1000-240 1S2P");
}

TEST_CASE("the order of panels and strings changes no number") {
    const Candidate one = array_candidate("barn pair x2 + porch four | porch four x3");
    const Candidate other = array_candidate("porch four x3 | porch four + barn pair + barn pair");
    CHECK(one.season->kwh == doctest::Approx(other.season->kwh).epsilon(1e-9));
    CHECK(one.bright.element_power_w ==
          doctest::Approx(other.bright.element_power_w).epsilon(1e-9));
    CHECK(one.smallest_headroom() == doctest::Approx(other.smallest_headroom()).epsilon(1e-9));
    CHECK(one.worst_severity() == other.worst_severity());
}

TEST_CASE("an array that cannot be is refused in one sentence") {
    CHECK(contains(refused("barn pair x3 + porch four"), "3 panels of group \"barn pair\""));
    CHECK(contains(refused("barn pair + pourch four"), "porch four"));
    CHECK(contains(refused("[barn pair | barn pair] + porch four"), "strings in parallel"));
    CHECK(contains(refused("barn pair + "), "array"));
    Installation both = unlike_yard("barn pair + porch four");
    both.circuit->group = "barn pair";
    CHECK_THROWS_WITH_AS(assessed(both), doctest::Contains("not given beside group and panels"),
                         heatmatch::InvalidInput);
    Installation neither = unlike_yard("");
    CHECK_THROWS_WITH_AS(assessed(neither), doctest::Contains("state array, or group and panels"),
                         heatmatch::InvalidInput);
}

TEST_CASE("every string of an unlike array has its own run on the bill") {
    Installation house = unlike_yard("barn pair x2 | porch four x2 | porch four x2");
    house.runs.insert(house.runs.begin(), {.name = "string",
                                           .carries = heatmatch::Carried::string,
                                           .length_m = 10.0,
                                           .wire = "pv-wire-12-awg"});
    house.runs.front().surroundings = {.kind = heatmatch::SurroundingsKind::open_air,
                                       .air_c = 30.0};
    const heatmatch::Candidate candidate = assessed(house);
    double metres = 0.0;
    for (const heatmatch::BillLine& line : heatmatch::run_items(candidate.circuit).lines) {
        if (contains(line.why, "string")) metres += line.quantity;
    }
    CHECK(metres == doctest::Approx(2.0 * 10.0 * 3));
}

TEST_CASE("the first screen writes an unlike array as it is wired, with finite numbers") {
    const Candidate candidate = array_candidate("barn pair x2 + porch four x2 | porch four x2");
    const heatmatch::FirstScreen screen = heatmatch::first_screen(candidate);
    std::string all;
    for (const heatmatch::ScreenBlock& block : screen.blocks) {
        for (const heatmatch::ScreenLine& line : block.lines) all += line.said.text() + '\n';
    }
    CHECK(contains(all, "barn pair x2 + porch four x2 | porch four x2 (Vmp/Imp"));
    CHECK_FALSE(contains(all, "nan"));
}
