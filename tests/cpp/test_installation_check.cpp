#include "demo.hpp"
#include "odd_numbers.hpp"
#include "refusal.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/solar/clear_days.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;

namespace {

struct Wrong {
    void (*change)(Installation&);
    const char* told;
};

// Source: the ranges of the field tables, which files are held to as well.
constexpr auto wrongs = std::to_array<Wrong>({
    {[](Installation& i) { i.site.record_low_c = not_a_number; },
     "installation: site: record_low_c"},
    {[](Installation& i) { i.site.tilt_deg = 120.0; }, "installation: site: tilt_deg = 120"},
    {[](Installation& i) {
         i.site.soiling_pct = {1.0, 2.0};
     },
     "soiling_pct"},
    {[](Installation& i) { i.weather->temp_min_c[3] = endless; }, "installation: weather"},
    {[](Installation& i) { i.panels[0].count = 0; },
     "installation: panels[0] \"barn pair\": count = 0 must be >= 1 and <= 64"},
    {[](Installation& i) { i.panels[0].age_years = -1.0; }, "age_years = -1"},
    {[](Installation& i) { i.panels[0].measured = heatmatch::PanelMeasurement{}; },
     "v_oc, i_sc = (missing)"},
    {[](Installation& i) { i.panels[0].panel = "silicon-60-cell-24"; },
     "did you mean \"silicon-60-cell-245\""},
    {[](Installation& i) { i.elements[0].count = 1000; }, "count = 1000"},
    {[](Installation& i) { i.elements.push_back({}); }, "element = (missing)"},
    {[](Installation& i) { i.store->shape.reset(); }, "installation: store: shape = (missing)"},
    {[](Installation& i) { i.store->stands = static_cast<heatmatch::StorePlace>(9); },
     "stands = \"choice 9\" must be in space or outside"},
    {[](Installation& i) { i.store->height_m = -0.5; }, "height_m = -0.5 m must be >= 0.02 m"},
    {[](Installation& i) { i.runs[0].length_m = not_a_number; },
     "installation: runs[0] \"home run\": length_m"},
    {[](Installation& i) {
         i.runs[0].surroundings.kind = static_cast<heatmatch::SurroundingsKind>(6);
     },
     "runs[0] \"home run\" surroundings: kind = \"choice 6\" must be open air, sunlit"},
    {[](Installation& i) { i.runs[0].carries = static_cast<heatmatch::Carried>(-1); },
     "carries = \"choice -1\" must be string, array, bank or branch"},
    {[](Installation& i) { i.runs[0].surroundings.loaded_conductors = 0; },
     "loaded_conductors = 0"},
    {[](Installation& i) { i.devices[0].duty.reset(); }, "duty = (missing)"},
    {[](Installation& i) { i.devices[0].poles_used = 99; }, "poles_used = 99"},
    {[](Installation& i) { i.space->volume_m3 = -16.0; }, "installation: space: volume_m3"},
    {[](Installation& i) { i.space->covers[0].area_m2 = 0.0; }, "space covers[0]"},
    {[](Installation& i) { i.goals.months = {13}; }, "installation: goals: months"},
    {[](Installation& i) { i.parts.put(heatmatch::Panel{.id = "own", .label = "Own"}); },
     "panel \"own\": v_oc = 0 V"},
});

/// The parts of the starter with one that no catalog would take.
heatmatch::Parts with_a_bad_element() {
    heatmatch::Parts parts = starter();
    heatmatch::Element element = heatmatch::find_element(parts, "storage-rod-1000-240");
    element.rated_w = -1000.0;
    parts.put(element);
    return parts;
}

heatmatch::Parts with_a_bad_wire() {
    heatmatch::Parts parts = starter();
    for (heatmatch::Wire& wire : parts.wires) wire.area_mm2 = not_a_number;
    return parts;
}

struct WrongCandidate {
    void (*change)(Candidate&);
    const char* told;
};

constexpr auto wrong_candidates = std::to_array<WrongCandidate>({
    {[](Candidate& c) { c.site.record_low_c = endless; }, "site: record_low_c"},
    {[](Candidate& c) { c.circuit.owned.count = -2; }, "panels \"barn pair\": count = -2"},
    {[](Candidate& c) { c.circuit.panel.given.i_sc = 0.0; }, "i_sc = 0 A"},
    {[](Candidate& c) { c.circuit.bank.element.heated_length_mm = not_a_number; },
     "heated_length_mm"},
    {[](Candidate& c) {
         c.circuit.runs[0].run.surroundings.kind = static_cast<heatmatch::SurroundingsKind>(8);
     },
     "run \"home run\" surroundings: kind = \"choice 8\""},
    {[](Candidate& c) { c.circuit.runs[0].wire->conductor.reset(); }, "conductor = (missing)"},
    {[](Candidate& c) { c.circuit.devices[0].device.duty = static_cast<heatmatch::Duty>(4); },
     "duty = \"choice 4\""},
    {[](Candidate& c) { c.circuit.devices[0].control.v_ac = -1.0; }, "v_ac = -1 V"},
});

}  // namespace

TEST_CASE("a wrong installation is refused at every entry as a file of it would be") {
    for (const Wrong& wrong : wrongs) {
        CAPTURE(std::string(wrong.told));
        Installation installation = demo();
        wrong.change(installation);
        CHECK(holds(refusal_of([&] { std::ignore = heatmatch::rank(starter(), installation); }),
                    wrong.told));
        CHECK(holds(refusal_of([&] { std::ignore = heatmatch::assess(starter(), installation); }),
                    wrong.told));
    }
    CHECK_NOTHROW(heatmatch::check_installation(demo(), starter()));
}

TEST_CASE("the parts that an installation names or chooses among are checked with it") {
    const auto refused = [](const heatmatch::Parts& parts) {
        return refusal_of([&] { std::ignore = heatmatch::rank(parts, demo()); });
    };
    CHECK(holds(refused(with_a_bad_element()),
                "element \"storage-rod-1000-240\": rated_w = -1000 W must be >= 0.1 W"));
    CHECK(holds(refused(with_a_bad_wire()), "area_mm2"));
}

TEST_CASE("a candidate that was changed is refused where days and wires begin") {
    const Candidate standing = heatmatch::assess(starter(), demo());
    const auto weather = heatmatch::clear_days(standing.site);
    for (const WrongCandidate& wrong : wrong_candidates) {
        CAPTURE(std::string(wrong.told));
        Candidate candidate = standing;
        wrong.change(candidate);
        CHECK(
            holds(refusal_of([&] { std::ignore = simulate_day(candidate, weather); }), wrong.told));
        CHECK(holds(refusal_of([&] { std::ignore = check_wires(candidate); }), wrong.told));
    }
}
