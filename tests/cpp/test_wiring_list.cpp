#include "demo.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/wiring_list.hpp"

using namespace heatmatch;

namespace {

RunParts run_called(std::string name, std::string_view kind, double air_c,
                    Carried carries = Carried::array) {
    RunParts run = bench_run("silicone-14-awg", air_c, kind);
    run.run.name = std::move(name);
    run.run.carries = carries;
    return run;
}

Circuit three_zones() {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 1});
    circuit.runs = {run_called("tail", "open air", 80.0, Carried::bank),
                    run_called("shed", "open air", 30.0), run_called("roof of 5 m", "sunlit", 35.0),
                    run_called("loft", "open air", 90.0)};
    circuit.devices = {bench_device("pv-isolator-2-pole", "breaks dc", 2, "shed"),
                       bench_device("snap-disc-fixed", "senses only", 1, "")};
    return circuit;
}

std::vector<std::string> column_under(const Table& table, std::string_view head,
                                      UnitSystem system = UnitSystem::si) {
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].head.text() != head) continue;
        for (const Sentences& row : table.rows) cells.push_back(row[i].text(system));
    }
    return cells;
}

}  // namespace

TEST_CASE("runs are sorted by zone, from the panels to the elements") {
    const Table table = wiring_list(three_zones(), {});
    CHECK(column_under(table, "zone") ==
          Texts{"1 sun and weather", "2 out of the sun", "3 hot end", "3 hot end"});
    CHECK(column_under(table, "run") == Texts{"roof of 5 m", "shed", "tail", "loft"});
    CHECK(column_under(table, "highest temperature") == Texts{"?", "?", "?", "?"});
    CHECK(column_under(table, "devices") ==
          Texts{"", "pv-isolator-2-pole (interrupts DC)", "", ""});
    CHECK(column_under(table, "joints").front() == "not known");
    CHECK(column_under(table, "suitable").empty());  // nothing to say of any run
    CHECK(wiring_list({}, {}).columns.size() == 11);
}

// Source: ASTM B258: 14 AWG is 2.08 mm2; 180 °C are 356 °F; a metre is 3.28 ft.
TEST_CASE("a wire has its size both ways, the reader's first") {
    const Table table = wiring_list(three_zones(), {});
    CHECK(column_under(table, "wire").front() == "silicone-14-awg, 2.08 mm2 (14 AWG) copper");
    CHECK(column_under(table, "wire", UnitSystem::us).front() ==
          "silicone-14-awg, 14 AWG (2.08 mm2) copper");
    CHECK(contains(column_under(table, "insulation and its limit", UnitSystem::us).front(), " °F"));
    CHECK(column_under(table, "length, one way", UnitSystem::us).front() == "3.28 ft");
    CHECK(column_under(table, "run", UnitSystem::us).front() == "roof of 5 m");
}

// Source: 150 °C are 302 °F, 90 °C 194 °F.
TEST_CASE("a checked run has its temperature, its limit, and suitable wires") {
    std::vector<WireCheck> checks{
        {.run = "shed",
         .conductor_c = 150.0,
         .limits = {{.what = WirePart::insulation, .limit_c = 90.0}},
         .limiting_part = WirePart::insulation,
         .severity = Severity::danger,
         .sentence = verbatim("It melts."),
         .sufficient_wire = find_wire(starter(), "silicone-14-awg"),
         .sufficient_gauge = verbatim("14 AWG")},
        {.run = "tail",
         .limiting_part = WirePart::joint,
         .severity = Severity::not_assessed,
         .at_element = true,
         .sentence = verbatim("Nobody knows.")},
        {.run = "loft", .runaway = true, .sentence = verbatim("It runs away.")}};
    const Table table = wiring_list(three_zones(), checks);
    CHECK(column_under(table, "highest temperature", UnitSystem::us) ==
          Texts{"?", "302 °F, danger", "not known: it may melt", "runaway: no steady temperature"});
    CHECK(column_under(table, "limit, by") == Texts{"?", "90 °C, insulation", "? °C, joint", "?"});
    CHECK(column_under(table, "suitable") == Texts{"", "silicone-14-awg, 14 AWG", "", ""});
    Texts reasons;
    for (const Sentence& reason : wiring_reasons(three_zones(), checks)) {
        reasons.push_back(reason.text());
    }
    CHECK(reasons == Texts{"shed: It melts.", "tail: Nobody knows.", "loft: It runs away.",
                           "snap-disc-fixed (senses only): placed in no run"});
}
