#include "demo.hpp"

#include <cmath>

#include "heatmatch/answer/delivered_table.hpp"

using namespace heatmatch;

namespace {

Candidate at_noon() {
    Candidate candidate{
        .circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 2})};
    candidate.delivered = {{.irradiance_w_m2 = 1000.0,
                            .cell_temperature_c = 45.0,
                            .power_low_w = 380.4,
                            .power_w = 400.0,
                            .power_high_w = 419.6,
                            .voltage_v = 61.23,
                            .current_a = 6.533,
                            .wire_w = 4.25,
                            .maximum_power_w = 500.0}};
    return candidate;
}

}  // namespace

// Source: 45 °C are 113 °F; 400 W of 500 W are 80 %.
TEST_CASE("power of a candidate has one row for each irradiance") {
    const Table table = delivered_table(at_noon());
    CHECK(table.title.text() ==
          "bench 2S1P into storage-rod-1000-240 1S2P: 400 W over the conditions");
    CHECK(delivered_plain_title().text() == "power at three irradiances");
    Sentences heads;
    for (const TableColumn& column : table.columns) heads.push_back(column.head);
    CHECK(text_of(heads, UnitSystem::si, "|") == "sun W/m2|cells|W|band|V|A|of max|wire W");
    REQUIRE(table.rows.size() == 1);
    CHECK(text_of(table.rows[0], UnitSystem::si, "|") ==
          "1000|45 °C|400|380-420|61.2|6.53|80 %|4.2");
    CHECK(text_of(table.rows[0], UnitSystem::us, "|") ==
          "1000|113 °F|400|380-420|61.2|6.53|80 %|4.2");
}

// Source: label of the panel; Vmp/Imp of two in series is twice that of one.
TEST_CASE("a circuit has its resistance, Vmp/Imp of the label and cold voltage in its sentence") {
    const Candidate candidate = at_noon();
    const Panel& panel = candidate.circuit.panel.panel;
    const std::string said = circuit_sentence(candidate).text();
    const auto numbers = numbers_in(said.substr(said.find(": ")));
    REQUIRE(numbers.size() == 3);
    CHECK(numbers[0] == doctest::Approx(candidate.circuit.bank.typical_ohm()).epsilon(5e-3));
    CHECK(numbers[1] == doctest::Approx(2.0 * *panel.v_mp / *panel.i_mp).epsilon(5e-3));
    CHECK(numbers[2] == std::round(candidate.circuit.cold_voltage_v()));
}
