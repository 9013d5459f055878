#include "unlike_yard.hpp"

#include <algorithm>
#include <limits>

#include "heatmatch/match/margins/unlike_array_margins.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// Two groups of the barn pair's panel, the second with that share of its current.
Installation strong_and_weak(double share, std::optional<int> bypass_diodes) {
    Installation house = unlike_yard("barn pair x2 + weak");
    heatmatch::Panel weak = heatmatch::find_panel(starter(), "silicon-60-cell-245");
    weak.id = "weak-panel";
    weak.i_sc *= share;
    weak.i_mp = *weak.i_mp * share;
    weak.bypass_diodes = bypass_diodes;
    house.parts.panels.push_back(weak);
    house.panels.push_back({.group = "weak", .panel = weak.id, .count = 1});
    return house;
}

std::vector<Margin> margins_of_house(const Installation& house) {
    return heatmatch::assess(starter(), house).margins();
}

}  // namespace

TEST_CASE("a weak panel in series is named with the watts that are lost") {
    // Half the current: at the array's best load its bypass diodes conduct and 2 of 2.5 panels
    // work.
    const std::vector<Margin> margins = margins_of_house(strong_and_weak(0.5, 3));
    const Margin lost = margin_of(margins, "unequal panels");
    CHECK(*lost.value == doctest::Approx(20.0).epsilon(0.15));
    CHECK(lost.severity == Severity::caution);
    CHECK(contains(lost.sentence(), "\"weak\""));
    CHECK(margin_of(margins, "string mismatch", "barn pair").severity == Severity::not_assessed);
}

TEST_CASE("a bypass diode that conducts at the load is told with its current") {
    Installation house = strong_and_weak(0.5, 3);
    house.circuit->element = "range-coil-2100-240";
    house.circuit->bank = "1S4P";
    const std::vector<Margin> margins = margins_of_house(house);
    const Margin weak = margin_of(margins, "bypass diodes", "weak");
    CHECK(*weak.value > 0.0);
    CHECK(static_cast<int>(weak.severity) >= static_cast<int>(Severity::caution));
    CHECK(weak.severity != Severity::not_assessed);
    const Margin strong = margin_of(margins, "bypass diodes", "barn pair");
    CHECK(*strong.value == 0.0);
    CHECK(strong.severity == Severity::none);
    for (const Margin& margin : margins) check_sentence(margin);
}

TEST_CASE("a panel without bypass diodes that others reverse is a danger; unstated may be one") {
    Installation house = strong_and_weak(0.3, 0);
    house.circuit->element = "range-coil-2100-240";
    house.circuit->bank = "1S2P";
    const Margin none = margin_of(margins_of_house(house), "reversed panel", "weak");
    CHECK(none.severity == Severity::danger);
    house.parts.panels.back().bypass_diodes.reset();
    const Margin unstated = margin_of(margins_of_house(house), "reversed panel", "weak");
    CHECK(unstated.worst_severity == Severity::danger);
    CHECK(unstated.severity != Severity::danger);
    CHECK(unstated.missing == std::vector<std::string>{"bypass_diodes"});
    house.parts.panels.back().bypass_diodes = 3;
    const Margin stated = margin_of(margins_of_house(house), "reversed panel", "weak");
    CHECK(stated.worst_severity == Severity::none);
}

TEST_CASE("panels of several planes are judged with each plane alone in the sun") {
    Installation house = unlike_yard("barn pair x2 + porch four x4");
    house.circuit->bank = "1S1P";
    house.circuit->element = "range-coil-2100-240";
    const Margin together = margin_of(margins_of_house(house), "bypass diodes", "porch four");
    house.panels[0].azimuth_deg = 90.0;
    house.panels[1].azimuth_deg = 270.0;
    const Margin apart = margin_of(margins_of_house(house), "bypass diodes", "porch four");
    CHECK(*apart.value > *together.value);
}

TEST_CASE("strings of unequal voltage and the current back into them are told") {
    const std::vector<Margin> margins =
        margins_of_house(unlike_yard("barn pair x2 | porch four x2"));
    const Margin unequal = margin_of(margins, "unequal strings");
    // Vmp of the labels: 2 x 30.2 against 2 x 17.6 V, the pair aged by its readings.
    CHECK(*unequal.value > 35.0);
    CHECK(*unequal.value < 50.0);
    CHECK(unequal.severity == Severity::caution);
    CHECK(count_margins(margins, "reverse current") == 2);
    // What is fed backwards is that of the other string, by the code's factor 1.56/1.25 of Isc.
    const heatmatch::Circuit circuit = array_candidate("barn pair x2 | porch four x2").circuit;
    const Margin porch = margin_of(margins, "reverse current", "silicon-36-cell-135");
    CHECK(*porch.value == doctest::Approx(1.25 * circuit.unlike->panel(0).bright_isc_a()));
}

TEST_CASE("one more unlike string never improves the reverse current") {
    double worst = 10.0;
    for (const char* array : {"barn pair x2", "barn pair x2 | porch four x2",
                              "barn pair x2 | porch four x2 | thin pair"}) {
        const Candidate candidate = array_candidate(array);
        double least = 1.0;
        for (const Margin& margin : candidate.margins()) {
            if (margin.name == "reverse current" && margin.headroom) {
                least = std::min(least, *margin.headroom);
            }
        }
        CHECK(least <= worst);
        worst = least;
    }
}

TEST_CASE("strings of unequal voltage are judged with the load open too") {
    // Six elements in parallel hold the strings far below either voltage; a limit that opens does
    // not. Their open circuits differ: 33.6 against twice 22.1 V by the labels.
    Installation house = unlike_yard("barn pair | porch four x2");
    house.circuit->element = "tubular-1000-120";
    house.circuit->bank = "1S6P";
    const Margin reversed = margin_of(margins_of_house(house), "reversed panel", "barn pair");
    CHECK(*reversed.value > 100.0);
    CHECK(reversed.severity == Severity::danger);
}

TEST_CASE("a group in shade is judged in it, the others in the sun") {
    Installation house = unlike_yard("thin pair x2 + dark");
    house.panels.push_back({.group = "dark", .panel = "cdte-100", .count = 1});
    house.parts.panels.push_back(heatmatch::find_panel(starter(), "cdte-100"));
    house.parts.panels.back().bypass_diodes = 0;
    const Margin lit = margin_of(margins_of_house(house), "reversed panel", "dark");
    house.panels.back().shade_pct = {80.0};
    const Margin shaded = margin_of(margins_of_house(house), "reversed panel", "dark");
    CHECK(*shaded.value > *lit.value + 10.0);
    CHECK(shaded.severity == Severity::danger);
}

// Source: the margins themselves, with two banks far apart.
TEST_CASE("what is reversed with the load open is a danger with any bank") {
    int found = 0;
    for (const char* array : {"barn pair | porch four x2", "barn pair x2 | porch four x2",
                              "barn pair | porch four", "thin pair | porch four x4",
                              "barn pair x2 + porch four x4", "porch four x2 | thin pair"}) {
        CAPTURE(array);
        const Candidate candidate = array_candidate(array);
        constexpr double open_ohm = std::numeric_limits<double>::infinity();
        const heatmatch::UnlikeArray& panels = *candidate.circuit.unlike;
        const bool open = heatmatch::reversed_too_far(panels, candidate.site, open_ohm);
        if (open) ++found;
        bool everywhere = true;
        for (const char* bank : {"1S6P", "2S1P"}) {
            Installation house = unlike_yard(array);
            house.circuit->element = "tubular-1000-120";
            house.circuit->bank = bank;
            const Candidate fed = heatmatch::assess(starter(), house);
            const double load_ohm =
                fed.circuit.bank.low_ohm() + fed.circuit.wire_ohm_at(heatmatch::room_c);
            bool danger = false;
            for (const Margin& margin : fed.margins()) {
                const bool reversed = margin.name == "reversed panel";
                danger = danger || (reversed && margin.severity == Severity::danger);
            }
            everywhere = everywhere && danger;
            if (open) CHECK(danger);
            const bool into_low = heatmatch::reversed_too_far(panels, candidate.site, load_ohm);
            CHECK((open || into_low) == danger);
        }
        CHECK(open == everywhere);
    }
    CHECK(found > 0);
    CHECK(found < 6);
}
