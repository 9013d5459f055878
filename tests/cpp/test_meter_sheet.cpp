#include "demo.hpp"
#include "operation_bench.hpp"
#include "refusal.hpp"
#include "synthetic_readings.hpp"
#include "within.hpp"

#include <set>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

using heatmatch::assess;
using heatmatch::Candidate;
using heatmatch::meter_sheet;
using heatmatch::MeterCheck;
using heatmatch::MeterRow;
using heatmatch::MeterSheet;

namespace {

/// The check whose reading has that text in it; the test stops without one.
MeterCheck check_of(const MeterSheet& sheet, std::string_view reading) {
    const auto found =
        std::find_if(sheet.checks.begin(), sheet.checks.end(),
                     [&](const MeterCheck& check) { return contains(check.reading, reading); });
    CAPTURE(std::string(reading));
    REQUIRE(found != sheet.checks.end());
    return *found;
}

bool has_line(const heatmatch::Sentences& lines, std::string_view piece) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](const heatmatch::Sentence& line) { return contains(line, piece); });
}

}  // namespace

TEST_CASE("resistance on the sheet is that of the nameplate with its tolerance, worked by hand") {
    const MeterSheet sheet = meter_sheet(demo_standing());
    // (240 V)² / 1000 W = 57.6 ohm at a rated coil of 600 °C, +5/-10 % of power. Its alloy is not
    // known: 0.97, 1.02 or 1.17 times the cold ohms at 700 °C, in proportion 0.97441, 1.01706 and
    // 1.14500 at 600 °C.
    const MeterCheck each = check_of(sheet, "one element");
    REQUIRE(each.typical);
    CHECK(within(*each.typical, 57.6 / 1.01706, 1e-5));
    CHECK(within(*each.low, 57.6 / 1.05 / 1.14500, 1e-5));
    CHECK(within(*each.high, 57.6 / 0.90 / 0.97441, 1e-5));
    const MeterCheck both = check_of(sheet, "resistance of the bank");
    CHECK(within(*both.typical, *each.typical / 2.0, 1e-12));  // 1S2P
    CHECK(within(*both.high, *each.high / 2.0, 1e-12));
    CHECK(contains(both.expect, "With one branch open, about"));
    const MeterCheck ratio = check_of(sheet, "voltage over current");
    CHECK(*ratio.low <= *both.low);
    CHECK(*ratio.high >= *both.high);
    CHECK(within(*ratio.typical, demo_standing().circuit.bank.typical_ohm(), 1e-12));
}

TEST_CASE("open-circuit voltage on the sheet is the label's by its coefficient, minus a section") {
    const Candidate candidate =
        bench_candidate("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 2}, 9.0);
    const MeterSheet sheet = meter_sheet(candidate, {.uncovered_cell_c = 5.0});
    const heatmatch::Panel& panel = heatmatch::find_panel(starter(), "silicon-60-cell-245");
    const MeterCheck open = check_of(sheet, "open-circuit voltage");
    const double by_hand =
        2.0 * panel.v_oc * (1.0 + *panel.beta_voc_pct_per_k / 100.0 * (5.0 - 25.0));
    CHECK(within(*open.typical, by_hand, 1e-9));
    // A third of one of two panels.
    CHECK(*panel.bypass_diodes == 3);
    CHECK(within(*open.low, by_hand * (1.0 - 1.0 / 6.0), 1e-9));
    const MeterCheck shorted = check_of(sheet, "short-circuit");
    CHECK(within(*shorted.typical, panel.i_sc, 1e-9));
    // The class's 3 % of power where the label states no tolerance.
    CHECK(within(*shorted.low, panel.i_sc * 0.97, 1e-9));
}

TEST_CASE("the voltage drop of the wire is its resistance there and back times the current") {
    const Candidate candidate =
        bench_candidate("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 2}, 9.0);
    const MeterSheet sheet = meter_sheet(candidate);
    const MeterCheck drop = check_of(sheet, "minus voltage at the bank");
    // IEC 60028: 17.241 nohm m at 20 °C, 0.00393/K; ASTM B258: 12 AWG is 3.3088 mm2. Nine metres
    // out and back, stranded and tinned wire a few percent more.
    const double solid_ohm = 2.0 * 9.0 * 0.017241 / 3.3088;
    CHECK(*drop.low >= solid_ohm);
    CHECK(*drop.low <= 1.08 * solid_ohm);
    const double hot = 1.0 + 0.00393 * (candidate.circuit.runs.front().conductor_c - 20.0);
    CHECK(within(*drop.typical, *drop.low * hot, 1e-3));
    const MeterRow& row = sheet.rows.front();
    CHECK(
        within(row.array_v.typical - row.bank_v.typical, row.bank_a.typical * *drop.typical, 1e-9));
}

TEST_CASE("rows agree with the power of the circuit and with strings added by hand") {
    for (const Candidate& candidate :
         {demo_standing(),
          bench_candidate("silicon-36-cell-135", {2, 2}, "tubular-1000-120", {1, 4}, 6.0)}) {
        const MeterSheet sheet = meter_sheet(candidate);
        REQUIRE(sheet.rows.size() == 12);
        const RealCircuit real = sound_circuit(candidate.circuit);
        for (const MeterRow& row : sheet.rows) {
            const auto delivered =
                heatmatch::deliver(candidate.circuit, row.irradiance_w_m2, row.cell_temperature_c);
            CHECK(within(row.bank_w.typical, delivered.power_w, 1e-12));
            CHECK(within(row.bank_v.typical, delivered.voltage_v, 1e-12));
            CHECK(within(row.bank_w.low, delivered.power_low_w, 1e-12));
            const TrueReading is = read_ideally(real, row.irradiance_w_m2, row.cell_temperature_c);
            CHECK(within(row.array_v.typical, is.array_v, 1e-6));
            CHECK(within(row.bank_a.typical, is.bank_a, 1e-6));
            CHECK(within(row.open_v.typical, is.open_v, 1e-6));
            CHECK(within(row.short_a.typical, is.short_a, 1e-6));
            for (const auto& band :
                 {row.open_v, row.short_a, row.array_v, row.bank_v, row.bank_a, row.bank_w}) {
                CHECK(band.low <= band.typical);
                CHECK(band.typical <= band.high);
            }
            CHECK(row.bank_a.high <= row.short_a.high);
        }
    }
}

TEST_CASE("cells of warmed-up panels follow NOCT, those just uncovered the air") {
    const Candidate candidate =
        bench_candidate("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 2}, 9.0);
    const MeterSheet sheet = meter_sheet(
        candidate, {.irradiance_w_m2 = {800.0, 100.0}, .air_c = -4.0, .uncovered_cell_c = 2.0});
    REQUIRE(sheet.rows.size() == 4);
    const double noct = *candidate.circuit.panel.panel.noct_c;
    CHECK(within(sheet.rows[0].cell_temperature_c, -4.0 + noct - 20.0, 1e-12));
    CHECK(within(sheet.rows[1].cell_temperature_c, -4.0 + (noct - 20.0) / 8.0, 1e-12));
    CHECK(sheet.rows[2].cell_temperature_c == 2.0);
    CHECK(sheet.rows[3].irradiance_w_m2 == 100.0);
}

TEST_CASE("every check has its own letter, how to do it, what to expect and what otherwise") {
    const MeterSheet sheet = meter_sheet(demo_standing());
    std::set<std::string> letters;
    for (const MeterCheck& check : sheet.checks) {
        CAPTURE(check.reading.text());
        letters.insert(check.letter);
        CHECK(!check.how.empty());
        CHECK(!check.expect.empty());
        CHECK(!(check.if_low.empty() && check.if_high.empty()));
        CHECK(!check.source.empty());
        CHECK(check.expect.text().find_first_of("{}") == std::string::npos);
        if (check.low && check.typical) CHECK(*check.low <= *check.typical);
        if (check.typical && check.high) CHECK(*check.typical <= *check.high);
    }
    CHECK(letters.size() == sheet.checks.size());
    CHECK(sheet.checks.size() == 12);
    CHECK(sheet.title.text() == "barn pair 2S1P into storage-rod-1000-240 1S2P");
    CHECK(!sheet.assumed.empty());
    CHECK(has_line(sheet.remarks, "5% for a sun meter"));
}

TEST_CASE("a sheet's sentences are in the unit set of the reader") {
    const MeterSheet sheet = meter_sheet(demo_standing());
    for (const MeterCheck& check : sheet.checks) {
        for (const heatmatch::Sentence& told :
             {check.how, check.expect, check.if_low, check.if_high}) {
            CHECK(!contains(told.text(heatmatch::UnitSystem::us), " °C"));
        }
    }
    const heatmatch::Sentence expect = check_of(sheet, "temperatures of the store").expect;
    CHECK(contains(expect.text(heatmatch::UnitSystem::us), "°F"));
    CHECK(contains(expect.text(), "°C"));
}

// With a leak Rf at a node x of the way up and a meter Rm: V+ = (1 - x) Voc Rm/(Rm + Rf) and V- = x
// Voc Rm/(Rm + Rf), by Ohm's law; the sheet's formulas must give x and Rf back.
TEST_CASE("the formulas for an earth fault return place and resistance") {
    const double voc = 90.0;
    const double x = 0.3;
    const double leak = 50e3;
    const double meter = 10e6;
    const double up = (1.0 - x) * voc * meter / (meter + leak);
    const double down = x * voc * meter / (meter + leak);
    CHECK(within(down / (up + down), x, 1e-12));
    CHECK(within(meter * (voc / (up + down) - 1.0), leak, 1e-9));
    const std::string expect = check_of(meter_sheet(demo_standing()), "to earth").expect.text();
    CHECK(contains(expect, "|V-| / (|V+| + |V-|)"));
    CHECK(contains(expect, "Rm (Voc / (|V+| + |V-|) - 1)"));
}

TEST_CASE("unknown values are named with their remedy and never estimated") {
    Candidate candidate = demo_standing();
    candidate.circuit.runs.clear();
    candidate.circuit.devices.clear();
    candidate.circuit.heat.reset();
    candidate.circuit.panel.panel.bypass_diodes.reset();
    const MeterSheet sheet = meter_sheet(candidate);
    for (const char* field : {"runs:", "devices:", "store:", "bypass_diodes of panel"}) {
        CHECK(has_line(sheet.missing, field));
    }
    CHECK(check_of(sheet, "minus voltage at the bank").expect.text() == "not known");
    CHECK(!check_of(sheet, "minus voltage at the bank").typical);
    CHECK(!check_of(sheet, "temperatures of the store").typical);
    CHECK(!check_of(sheet, "open-circuit voltage").low);
    CHECK(sheet.checks.size() == 12);
    const MeterSheet blank = meter_sheet(Candidate{});
    CHECK(blank.rows.empty());
    CHECK(blank.checks.size() == 12);
    CHECK(has_line(blank.missing, "panel: name the panel"));
    CHECK(has_line(blank.missing, "element: name the element"));
    CHECK(check_of(blank, "one element").expect.text() == "not known");
}

TEST_CASE("the trip of the limit is its set point, if that is known") {
    Candidate candidate = demo_standing();
    for (auto& placed : candidate.circuit.devices) placed.device.set_c.reset();
    CHECK(has_line(meter_sheet(candidate).missing, "set_c of device \"snap-disc-manual-reset\""));
    for (auto& placed : candidate.circuit.devices) {
        if (placed.control.reset == heatmatch::ResetKind::manual) placed.device.set_c = 95.0;
    }
    const MeterCheck trip = check_of(meter_sheet(candidate), "independent limit");
    CHECK(*trip.typical == 95.0);
    CHECK(*trip.low == 90.0);
    CHECK(*trip.high == 100.0);
}

TEST_CASE("options out of range are refused") {
    const auto refusal = [](const heatmatch::MeterSheetOptions& options) {
        return refusal_of<heatmatch::InvalidInput>(
            [&] { static_cast<void>(meter_sheet(demo_standing(), options)); });
    };
    CHECK(holds(refusal({.irradiance_w_m2 = {0.0}}), "irradiance_w_m2"));
    CHECK(holds(refusal({.air_c = 200.0}), "air_c"));
    CHECK(holds(refusal({.uncovered_cell_c = std::nan("")}), "uncovered_cell_c"));
}

// Source: arithmetic: at the label's temperature the factor is 1, above it less.
TEST_CASE("the formula of the open-circuit voltage has no factor of 1 and no doubled sign") {
    const auto told = [](double cell_c) {
        return check_of(meter_sheet(standing(), {.uncovered_cell_c = cell_c}),
                        "open-circuit voltage of the array")
            .expect.text();
    };
    CHECK(told(25.0).find("(1 ") == std::string::npos);
    CHECK(told(40.0).find(" x (1 - 0.00") != std::string::npos);
    CHECK(told(40.0).find("+ -") == std::string::npos);
}

// Source: a damp element energized from the mains may fault through its sheath.
TEST_CASE("nobody is told to energize a damp element") {
    const MeterCheck damp = check_of(meter_sheet(standing()), "insulation resistance");
    CHECK(contains(damp.if_low, "dried and its insulation tested by a qualified person before"));
    CHECK_FALSE(contains(damp.if_low, "voltage"));
}
