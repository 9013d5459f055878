#include "demo.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/wires_table.hpp"

using namespace heatmatch;

namespace {

/// A run at the element whose insulation melts, and suitable ones.
WireCheck melting() {
    WireCheck check{.run = "feed of 2 m",
                    .wire = "thhn-12-awg",
                    .current_a = 8.66,
                    .conductor_c = 150.0,
                    .limits = {{.what = WirePart::insulation, .limit_c = 90.0},
                               {.what = WirePart::joint, .limit_c = 150.0}},
                    .limiting_part = WirePart::insulation,
                    .severity = Severity::danger,
                    .corrected_ampacity_a = 17.32,
                    .at_element = true,
                    .sentence = verbatim("It melts.")};
    check.sufficient_wire = find_wire(starter(), "silicone-14-awg");
    check.sufficient_gauge = verbatim("14 AWG (2.08 mm2)");
    for (const double limit_c : {250.0, 180.0, 200.0, 260.0, 450.0}) {
        check.reach.push_back(
            {.insulation = "i" + format_number(limit_c), .limit_c = limit_c, .from_m = 0.0});
    }
    check.reach.push_back({.insulation = "pvc", .limit_c = 90.0, .from_m = 0.25});
    check.reach.push_back({.insulation = "never", .limit_c = 60.0});
    return check;
}

}  // namespace

// Source: 150 °C are 302 °F, 90 °C 194 °F; ASTM B258: 3.31 mm2 is 12 AWG.
TEST_CASE("a run has its wire, current, heat and limit in a row") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.runs[0].run.name = "feed of 2 m";
    const std::vector<WireCheck> checks{melting()};
    const Table table = wires_table(circuit, checks);
    CHECK(table.title.text() == "wires of bench 2S1P into storage-rod-1000-240 1S1P");
    REQUIRE(table.rows.size() == 1);
    CHECK(line(table.rows[0]) == "feed of 2 m|thhn-12-awg|3.31 mm2|8.7|17.3|150|90|insulation");
    CHECK(line(table.rows[0], UnitSystem::us) ==
          "feed of 2 m|thhn-12-awg|12 AWG|8.7|17.3|302|194|insulation");
    CHECK(table.columns[5].head.text(UnitSystem::us) == "hot, °F");
    CHECK(contains(text_of(table.legend, UnitSystem::us),
                   "highest conductor temperature in °F. limit"));
}

TEST_CASE("unknown values of a run are not shown as numbers") {
    std::vector<WireCheck> checks{melting(), melting()};
    checks[0].severity = Severity::not_assessed;
    checks[0].limiting_part.reset();
    checks[1].runaway = true;
    const Table table = wires_table({}, checks);
    CHECK(line(table.rows[0]) == "feed of 2 m|thhn-12-awg|?|8.7|17.3|?|?|?");
    CHECK(table.rows[1][5].text() == "runaway");
}

// Source: 0.25 m are 0.82 ft.
TEST_CASE("a run that melts lists suitable insulations, the coolest first") {
    const std::vector<WireCheck> checks{melting()};
    const auto lines = wire_lines(checks);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].reason.text(UnitSystem::us) == "danger: feed of 2 m: It melts.");
    REQUIRE(lines[0].remedies.size() == 3);
    CHECK(lines[0].remedies[0].text() == "suitable: silicone-14-awg, 14 AWG (2.08 mm2)");
    CHECK(lines[0].remedies[1].text() ==
          "insulation suitable at the terminal: i180 (180 °C), i200 (200 °C), i250 (250 °C), "
          "i260 (260 °C) and 1 more");
    CHECK(lines[0].remedies[2].text(UnitSystem::us) ==
          "insulation suitable only further from the terminal: pvc (194 °F, from 0.82 ft)");
}

TEST_CASE("runs with the same finding are listed together, and only such") {
    WireCheck fine{
        .run = "home run", .severity = Severity::none, .sentence = verbatim("It holds.")};
    WireCheck other = fine;
    other.run = "along the wall";
    WireCheck last = fine;
    last.run = "third";
    last.sentence = verbatim("It holds too.");
    const std::vector<WireCheck> checks{fine, melting(), other, last};
    const auto lines = wire_lines(checks);
    REQUIRE(lines.size() == 3);
    CHECK(lines[0].reason.text() == "no finding: home run, along the wall: It holds.");
    CHECK(lines[1].reason.text() == "danger: feed of 2 m: It melts.");
    CHECK(lines[2].reason.text() == "no finding: third: It holds too.");
    const std::vector<WireCheck> twice{melting(), melting()};
    CHECK(wire_lines(twice).size() == 2);
}

TEST_CASE("insulations are listed only where another one would change the finding") {
    WireCheck plated = melting();
    plated.severity = Severity::caution;
    plated.limiting_part = WirePart::plating;
    plated.sufficient_wire.reset();
    const std::vector<WireCheck> checks{plated};
    CHECK(wire_lines(checks).front().remedies.empty());
    plated.limiting_part = WirePart::insulation;
    const std::vector<WireCheck> insulated{plated};
    CHECK_FALSE(wire_lines(insulated).front().remedies.empty());
}
