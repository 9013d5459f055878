#include "bench_wires.hpp"
#include "demo.hpp"
#include "reference_csv.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/heat/wire_temperature.hpp"

using heatmatch::ampacity_by_balance_a;
using heatmatch::BedAround;
using heatmatch::conductor_temperature;
using heatmatch::Insulation;
using heatmatch::Surroundings;
using heatmatch::Wire;

namespace {

const Insulation& rubber() {
    return heatmatch::find_insulation(starter(), silicone().insulation);
}
double limit_at(double limit_c, const Surroundings& around, const BedAround& bed = {}) {
    return ampacity_by_balance_a(silicone(), &rubber(), limit_c, around, bed).value();
}

double ampacity_of(const ReferenceRow& row, const Surroundings& around) {
    const Wire wire{.conductor = heatmatch::ConductorMetal::copper,
                    .plating = heatmatch::Plating::bare,
                    .area_mm2 = heatmatch::awg_area_mm2(number(row, "awg")),
                    .strands = 7,
                    .outer_diameter_mm = number(row, "outer_mm")};
    const Insulation insulation{.conductivity_w_mk = number(row, "insulation_w_mk")};
    return ampacity_by_balance_a(wire, &insulation, number(row, "conductor_c"), around).value();
}

}  // namespace

// Source: NEC Table 310.17, see tests/reference/ampacity_open.csv. -6 to +14 %: the spread of the
// table's steps of 5 A and its older cooling law around this one.
TEST_CASE("the whole table of currents in free air is met within its steps") {
    int compared = 0;
    double lowest = 1.0;
    double highest = -1.0;
    for (const ReferenceRow& row : read_reference("ampacity_open.csv")) {
        if (row.at("quantity") != "ampacity") continue;
        CAPTURE(row.at("case"));
        const double found = ampacity_of(row, Surroundings::open_air(number(row, "ambient_c")));
        const double off = found / number(row, "expected") - 1.0;
        CHECK(off >= -0.06);
        CHECK(off <= 0.14);
        lowest = std::min(lowest, off);
        highest = std::max(highest, off);
        ++compared;
    }
    CHECK(compared == 12);
    // The law is not simply low or high.
    CHECK(lowest < 0.0);
    CHECK(highest > 0.0);
}

// Source: NEC Table 310.16, see tests/reference/ampacity_open.csv. 0.7 of the free-air current is
// an estimate without a careful side: up to 17 % below the table, up to 10 % above it, and above
// the two rows of 60 °C that were lowered in 2011. The code's table decides.
TEST_CASE("the estimate for conduit lies around the code's table") {
    int compared = 0;
    for (const ReferenceRow& row : read_reference("ampacity_open.csv")) {
        if (row.at("quantity") != "raceway") continue;
        CAPTURE(row.at("case"));
        const double found = ampacity_of(row, Surroundings::conduit(number(row, "ambient_c")));
        const double off = found / number(row, "expected") - 1.0;
        CHECK(off >= -0.17);
        CHECK(off <= (contains(row.at("case"), "2011") ? 0.12 : 0.10));
        if (contains(row.at("case"), "2011")) CHECK(off > 0.0);
        ++compared;
    }
    CHECK(compared == 14);
}

// Source: the other way through the same balance: the wire at that current is at the limit.
TEST_CASE("at its ampacity a wire is at its limit, and hotter above it") {
    for (const Surroundings& around :
         {Surroundings::open_air(25), Surroundings::sunlit(40, 800), Surroundings::conduit(30),
          Surroundings{.kind = heatmatch::SurroundingsKind::bed, .air_c = 120},
          Surroundings{.kind = heatmatch::SurroundingsKind::cavity, .air_c = 50},
          Surroundings{.kind = heatmatch::SurroundingsKind::open_air,
          .air_c = 30,
          .wind_m_s = 3.0,
          .loaded_conductors = 5}}) {
        CAPTURE(std::string(word_of(around.kind)));
        for (const double limit : {130.0, 180.0, 450.0}) {
            CAPTURE(limit);
            const double current = limit_at(limit, around);
            const auto at = conductor_temperature(silicone(), &rubber(), current, around);
            CHECK_FALSE(at->runaway);
            CHECK(at->conductor_c == doctest::Approx(limit).epsilon(1e-6));
            const auto above = conductor_temperature(silicone(), &rubber(), 1.01 * current, around);
            CHECK(above->conductor_c > limit);
        }
    }
}

TEST_CASE("where sun and surroundings alone are too hot a wire may carry nothing") {
    CHECK(limit_at(90.0, Surroundings::open_air(90)) == 0.0);
    CHECK(limit_at(90.0, Surroundings::open_air(120)) == 0.0);
    CHECK(limit_at(60.0, Surroundings::sunlit(55, 1000)) == 0.0);
    CHECK(limit_at(90.0, Surroundings::sunlit(55, 1000)) > 0.0);
    CHECK_FALSE(ampacity_by_balance_a(silicone(), nullptr, 90.0,
                                      {.kind = heatmatch::SurroundingsKind::open_air}));
}

// Source: wiring rules (BS 7671 regulation 523.9, read in a guide): half the current where thermal
// insulation surrounds a cable over 0.5 m or more. Ours between 0.42 and 0.58 for 14 to 8 AWG.
TEST_CASE("in a filled cavity a wire carries about half of what it carries in free air") {
    for (const ReferenceRow& row : read_reference("ampacity_open.csv")) {
        if (row.at("quantity") != "ampacity") continue;
        CAPTURE(row.at("case"));
        const double share =
            ampacity_of(row, {.kind = heatmatch::SurroundingsKind::cavity, .air_c = 30.0}) /
            ampacity_of(row, Surroundings::open_air(30.0));
        CHECK(share > 0.42);
        CHECK(share < 0.58);
    }
}

// Source: the code's adjustment for more than three conductors: 80, 70, 50, 45, 40, 35 %, read in
// several public reproductions of table 310.15(C)(1).
TEST_CASE("bundled conductors share the current of the bundle") {
    const double three = limit_at(90.0, Surroundings::conduit(30));
    struct Step {
        int loaded;
        double share;
    };
    for (const auto kind :
         {heatmatch::SurroundingsKind::conduit, heatmatch::SurroundingsKind::open_air}) {
        for (const Step& step :
             {Step{2, 1.0}, Step{3, 1.0}, Step{4, 0.8}, Step{6, 0.8}, Step{7, 0.7}, Step{9, 0.7},
              Step{10, 0.5}, Step{20, 0.5}, Step{21, 0.45}, Step{31, 0.40}, Step{41, 0.35}}) {
            CAPTURE(step.loaded);
            CHECK(limit_at(90.0, {.kind = kind, .air_c = 30, .loaded_conductors = step.loaded}) ==
                  doctest::Approx(step.share * three));
        }
    }
    CHECK(limit_at(90.0, {.kind = heatmatch::SurroundingsKind::open_air,
                          .air_c = 30,
                          .loaded_conductors = 1}) == doctest::Approx(three / 0.7));
    for (const auto kind :
         {heatmatch::SurroundingsKind::bed, heatmatch::SurroundingsKind::cavity}) {
        CHECK(limit_at(130.0, {.kind = kind, .air_c = 100, .loaded_conductors = 4}) <
              limit_at(130.0, {.kind = kind, .air_c = 100}));
    }
}

TEST_CASE("the bed's own temperature and conductivity may come from elsewhere") {
    const Surroundings bed{.kind = heatmatch::SurroundingsKind::bed};
    const auto at = [](const BedAround& around, const Surroundings& where) {
        return conductor_temperature(silicone(), &rubber(), 20.0, where, around);
    };
    CHECK_FALSE(at({}, bed));
    CHECK_FALSE(at({.conductivity_w_mk = 0.3}, bed));
    const auto low = at({.temperature_c = 150.0}, bed);
    const auto good = at({.temperature_c = 150.0, .conductivity_w_mk = 0.35}, bed);
    CHECK(low->conductor_c > good->conductor_c);
    CHECK(good->conductor_c > 150.0);
    CHECK(low->assumed.size() == 1);
    CHECK(good->assumed.empty());
    // The statement of the run takes precedence.
    CHECK(at({.temperature_c = 300.0}, {.kind = heatmatch::SurroundingsKind::bed, .air_c = 150.0})
              ->conductor_c == doctest::Approx(low->conductor_c));
    // A bed's temperature is not that of a wire in air.
    CHECK_FALSE(at({.temperature_c = 150.0}, {.kind = heatmatch::SurroundingsKind::open_air}));
}

// Source: NEC chapter 9 table 8: 14 AWG solid, 3.07 ohm a thousand feet at 75 °C; arithmetic.
TEST_CASE("a run loses voltage and power out and back") {
    const Wire wire{.conductor = heatmatch::ConductorMetal::copper,
                    .area_mm2 = heatmatch::awg_area_mm2(14),
                    .strands = 1};
    const auto [drop_v, heat_w] = heatmatch::run_loss(wire, 304.8, 4.0, 75.0);
    CHECK(drop_v == doctest::Approx(4.0 * 2.0 * 3.07).epsilon(0.005));
    CHECK(heat_w == doctest::Approx(16.0 * 2.0 * 3.07).epsilon(0.005));
    CHECK(heatmatch::run_loss(wire, 10.0, 0.0, 75.0).drop_v == 0.0);
}
