#include "demo.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/diagnosis_table.hpp"

using namespace heatmatch;

namespace {

Diagnosis of_three() {
    Diagnosis diagnosis{.group = 2, .indistinguishable = true};
    for (const char* name : {"dirt", "low sun", "hot joint"}) {
        diagnosis.ranked.push_back(
            {.name = name, .sentence = words(name), .misfit = 1.25, .weight = 0.333});
    }
    for (const char* reading : {"volts", "amperes", "ohms"}) {
        diagnosis.next.push_back({.reading = words(reading),
                                  .how = words("At noon."),
                                  .predictions = words("Less: dirt.")});
    }
    return diagnosis;
}

}  // namespace

TEST_CASE("explanations that readings do not separate are marked, with the next measurement") {
    Diagnosis diagnosis = of_three();
    Table table = diagnosis_table(diagnosis);
    CHECK(table.title.text() == "explanations, the best first");
    REQUIRE(table.rows.size() == 3);
    CHECK(text_of(table.rows[1], UnitSystem::si, "|") ==
          "low irradiance|0.33|1.2|cannot be distinguished");
    CHECK(table.rows[2].back().empty());
    const Sentences said = diagnosis_sentences(diagnosis);
    REQUIRE(said.size() == 4);
    CHECK(said[1].text() == "low sun");
    CHECK(said[2].text() == "Measure next: volts. At noon. Less: dirt.");
    CHECK(evidence_title(diagnosis).text() == "evidence for dirt:");
    diagnosis.indistinguishable = false;
    table = diagnosis_table(diagnosis);
    CHECK(table.rows[0].back().empty());
}

TEST_CASE("a diagnosis without explanations has an empty table") {
    const Diagnosis diagnosis;
    CHECK(diagnosis_table(diagnosis).rows.empty());
    CHECK(diagnosis_sentences(diagnosis).empty());
    CHECK(evidence_title(diagnosis).empty());
}

TEST_CASE("readings name the circuit that they are of") {
    const Circuit circuit =
        bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 1});
    CHECK(readings_title(circuit).text() == "readings of " + circuit.title());
}
