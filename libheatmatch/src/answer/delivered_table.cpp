#include "heatmatch/answer/delivered_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Amount whole(double value, const Unit& unit) {
    return {.value = value, .unit = unit, .decimals = 0};
}

TableColumn numbers(Sentence head) {
    return {.head = std::move(head), .number = true};
}

Sentences row_of(const Delivered& at) {
    return {number_cell(at.irradiance_w_m2, 0, unit::watt_per_m2),
            sentence_of(Amount{.value = at.cell_temperature_c, .unit = unit::celsius}),
            number_cell(at.power_w, 0, unit::watt),
            say<"cell.low_high">(with<"low">(number(at.power_low_w, 0, unit::watt)),
                                 with<"high">(number(at.power_high_w, 0, unit::watt))),
            number_cell(at.voltage_v, 1, unit::volt),
            number_cell(at.current_a, 2, unit::ampere),
            say<"cell.share">(with<"share">(percent_number(at.harvest_fraction()))),
            number_cell(at.wire_w, 1, unit::watt)};
}

}  // namespace

Table delivered_table(const Candidate& candidate) {
    Table table{
        .title = say<"delivered.title">(with<"circuit">(candidate.circuit.title()),
                                        with<"mean">(whole(candidate.mean_power_w(), unit::watt))),
        .columns = {numbers(say<"delivered.sun">(
                        with<"unit">(Amount{.unit = unit::watt_per_m2, .shown = Shown::unit}))),
                    numbers(say<"delivered.cells">()), numbers(unit_cell(unit::watt)),
                    numbers(say<"head.band">()), numbers(unit_cell(unit::volt)),
                    numbers(unit_cell(unit::ampere)), numbers(say<"delivered.of_most">()),
                    numbers(say<"delivered.wire">())}};
    for (const Delivered& at : candidate.delivered) table.rows.push_back(row_of(at));
    return table;
}

Sentence delivered_plain_title() {
    return say<"delivered.plain_title">();
}

Sentence circuit_sentence(const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    return say<"delivered.circuit">(with<"circuit">(circuit.title()),
                                    with<"ohm">(circuit.bank.typical_ohm(), unit::ohm),
                                    with<"label_ohm">(circuit.label_match_ohm(), unit::ohm),
                                    with<"cold">(whole(circuit.cold_voltage_v(), unit::volt)));
}

}  // namespace heatmatch
