#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/careful_case.hpp"

using heatmatch::assess;
using heatmatch::Candidate;
using heatmatch::careful_case;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// The demo with everything stated that has a careful end, at its kind end.
Installation all_told() {
    Installation installation = demo();
    installation.site.array_on = heatmatch::ArrayPlace::ground;
    installation.site.earthing = heatmatch::Earthing::floating;
    installation.site.frames_bonded = true;
    installation.site.live_parts_enclosed = true;
    for (heatmatch::WireRun& run : installation.runs) {
        run.inside = false;
        run.surroundings.metal_raceway = run.surroundings.metal_raceway.value_or(false);
        run.surroundings.roof_distance_mm = 1000.0;
    }
    for (heatmatch::Device& device : installation.devices) {
        device.opens_on_supply_loss = true;
        device.opens_on_probe_break = true;
        device.set_tolerance_k = 5.0;
    }
    heatmatch::Store& store = *installation.store;
    store.vented = true;
    store.stands_on = heatmatch::StandsOn::concrete;
    store.element_height_mm = 100.0;
    store.from_axis_mm = 0.0;
    store.element_lies = false;
    store.vessel_bonded = true;
    store.sheath_bonded = true;
    return installation;
}

/// One fact of an installation, removed.
struct Forgotten {
    const char* what;
    void (*forget)(Installation&);
};
constexpr auto forgettable = std::to_array<Forgotten>({
    {"store.vented", [](Installation& i) { i.store->vented.reset(); }},
    {"store.moist", [](Installation& i) { i.store->moist.reset(); }},
    {"store.air_c", [](Installation& i) { i.store->air_c.reset(); }},
    {"store.charge_hours", [](Installation& i) { i.store->charge_hours.reset(); }},
    {"store.combustible_distance_mm",
     [](Installation& i) { i.store->combustible_distance_mm.reset(); }},
    {"store.rods_packed", [](Installation& i) { i.store->rods_packed.reset(); }},
    {"store.stands_on", [](Installation& i) { i.store->stands_on.reset(); }},
    {"store.element_height_mm", [](Installation& i) { i.store->element_height_mm.reset(); }},
    {"store.from_axis_mm", [](Installation& i) { i.store->from_axis_mm.reset(); }},
    {"store.element_lies", [](Installation& i) { i.store->element_lies.reset(); }},
    {"store.vessel_bonded", [](Installation& i) { i.store->vessel_bonded.reset(); }},
    {"store.sheath_bonded", [](Installation& i) { i.store->sheath_bonded.reset(); }},
    {"site.frames_bonded", [](Installation& i) { i.site.frames_bonded.reset(); }},
    {"site.earthing", [](Installation& i) { i.site.earthing.reset(); }},
    {"site.array_on", [](Installation& i) { i.site.array_on.reset(); }},
});

int worst_of(const Margin& margin) {
    return static_cast<int>(margin.worst_severity);
}

}  // namespace

TEST_CASE("with every fact stated the worst case is the likely one, or could not be assessed") {
    for (const Margin& margin : assess(starter(), all_told()).margins()) {
        CAPTURE(margin.name);
        CAPTURE(margin.subject);
        CHECK(worst_of(margin) == heatmatch::badness(margin.severity, margin.consequence));
        CHECK(margin.careful_headroom == margin.headroom);
    }
}

TEST_CASE("removing a fact never improves a margin's worst case") {
    const Candidate told = assess(starter(), all_told());
    for (const Forgotten& each : forgettable) {
        CAPTURE(each.what);
        Installation installation = all_told();
        each.forget(installation);
        const Candidate less = assess(starter(), installation);
        REQUIRE(less.margins().size() >= told.margins().size());
        for (const Margin& before : told.margins()) {
            const Margin after = margin_of(less.margins(), before.name, before.subject);
            CAPTURE(before.name);
            CAPTURE(before.subject);
            CHECK(worst_of(after) >= worst_of(before));
            if (before.careful_headroom && after.careful_headroom) {
                CHECK(*after.careful_headroom <= *before.careful_headroom + 1e-9);
            }
        }
    }
}

TEST_CASE("a danger that only an unstated fact prevents is a warning that reports it") {
    Installation installation = all_told();
    installation.store->vented.reset();
    installation.store->moist = true;
    const Margin margin = margin_of(assess(starter(), installation).margins(), "pressure");
    CHECK(margin.severity == Severity::warning);
    CHECK(margin.worst_severity == Severity::danger);
    check_sentence(margin);
    CHECK(contains(margin.sentence(), "a closed vessel bursts"));
}

TEST_CASE("a limit whose place is not stated may sense no heat, and be in the hottest place") {
    Installation installation = all_told();
    for (heatmatch::Device& device : installation.devices) device.senses.reset();
    const Candidate candidate = assess(starter(), installation);
    const auto careful = careful_case(candidate.circuit, candidate.site);
    std::size_t anywhere = 0;
    for (const heatmatch::PlacedDevice& placed : careful.circuit.devices) {
        CHECK(placed.device.senses == heatmatch::SensedPlace::space);
        anywhere += placed.anywhere ? 1 : 0;
    }
    CHECK(anywhere == installation.devices.size());
    for (const Margin& margin : candidate.margins()) {
        if (margin.name == "limit acts in time") CHECK(margin.worst_severity >= Severity::warning);
    }
}

TEST_CASE("a string fuse without a stated run may be behind the joint of the strings") {
    Installation installation = all_told();
    installation.circuit->panels = "1S2P";
    installation.devices.push_back({.part = "gpv-fuse-10x38",
                                    .duty = heatmatch::Duty::protects_a_string,
                                    .set_tolerance_k = 5.0});
    const auto judged = [&] { return assess(starter(), installation).margins(); };
    const Margin untold = margin_of(judged(), "string fuse");
    CHECK(untold.severity == Severity::warning);
    CHECK(untold.worst_severity == Severity::danger);
    installation.devices.back().run = installation.runs.front().name;
    CHECK(margin_of(judged(), "string fuse").severity == Severity::danger);
    installation.runs.push_back({.name = "string lead",
                                 .carries = heatmatch::Carried::string,
                                 .length_m = 2.0,
                                 .wire = "pv-wire-10-awg"});
    installation.devices.back().run = "string lead";
    CHECK(margin_of(judged(), "string fuse").worst_severity == Severity::none);
}

TEST_CASE("the one fact that decides is named") {
    Installation installation = all_told();
    installation.store->moist = true;
    installation.store->vented.reset();
    const Candidate doubtful = assess(starter(), installation);
    if (doubtful.severity() == Severity::danger) return;
    const auto fact = doubtful.deciding_fact();
    REQUIRE(fact);
    CHECK(fact->part == "store");
    CHECK(fact->field == "vented");
}

// Its limit is the most important one, and no careful case stands in for a check that is not made.
TEST_CASE("an unknown sheath is named before a fact that decides by itself") {
    Installation installation = all_told();
    installation.site.frames_bonded.reset();
    const auto decides = [&] { return assess(starter(), installation).deciding_fact(); };
    REQUIRE(decides());
    CHECK(decides()->field == "frames_bonded");

    const std::string own = "own-rod";
    heatmatch::Element element = find_element(starter(), installation.circuit->element);
    element.id = own;
    element.sheath.clear();
    installation.parts.elements.push_back(element);
    installation.circuit->element = own;
    REQUIRE(decides());
    CHECK(decides()->field == "sheath");
    CHECK(decides()->part == "element \"own-rod\"");
}

TEST_CASE("facts are filled with the careful ends of the field tables, and no stated one is") {
    Installation installation = demo();
    installation.store->vented.reset();
    const Candidate candidate = assess(starter(), installation);
    const auto careful = careful_case(candidate.circuit, candidate.site);
    const auto filled = [&careful](std::string_view part, std::string_view field) {
        return std::find(careful.facts.begin(), careful.facts.end(),
                         heatmatch::UnstatedFact{std::string(part), std::string(field)}) !=
               careful.facts.end();
    };
    CHECK(filled("store", "vented"));
    CHECK(!filled("store", "moist"));
    CHECK(careful.circuit.heat->store->store.vented == false);
    CHECK(careful.circuit.heat->store->store.moist == installation.store->moist);
}

TEST_CASE("a ranking places candidates that an unstated fact may make a danger after the others") {
    Installation installation = all_told();
    installation.site.frames_bonded.reset();  // above the touch limit only
    const heatmatch::Ranking ranking = rank(starter(), installation, keep_all());
    bool behind = false;
    for (const Candidate& candidate : ranking.candidates) {
        const bool doubtful = candidate.worst_severity() == Severity::danger;
        CAPTURE(candidate.circuit.title());
        CHECK(doubtful >= behind);
        behind = doubtful;
    }
}
