#include "heatmatch/answer/sheet_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

Sentence ends(const ExpectedBand& band, int decimals, const Unit& unit) {
    return say<"cell.low_high">(with<"low">(number(band.low, decimals, unit)),
                                with<"high">(number(band.high, decimals, unit)));
}

Sentences row_of(const MeterRow& row, bool uncovered) {
    return {number_cell(row.irradiance_w_m2, 0, unit::watt_per_m2),
            uncovered ? say<"sheet.cool">() : say<"sheet.warm">(),
            degrees_cell(row.cell_temperature_c),
            number_cell(row.open_v.typical, 1, unit::volt),
            number_cell(row.short_a.typical, 2, unit::ampere),
            number_cell(row.array_v.typical, 1, unit::volt),
            ends(row.bank_v, 1, unit::volt),
            ends(row.bank_a, 2, unit::ampere),
            ends(row.bank_w, 0, unit::watt)};
}

Sentence legend() {
    return say<"sheet.legend">(with<"sun">(unit_cell(unit::watt_per_m2)),
                               with<"degrees">(unit_cell(unit::celsius)));
}

}  // namespace

Table sheet_table(const MeterSheet& sheet) {
    // The irradiance is in the first column, because it identifies the row.
    Table table{.title = sheet.title,
                .columns = {{.head = say<"sheet.sun">()}, {.head = say<"sheet.panels">()}},
                .legend = {legend()}};
    for (Sentence head : {say<"sheet.cells">(), say<"sheet.open">(), say<"sheet.short">(),
                          say<"sheet.array">(with<"unit">(unit_cell(unit::volt))),
                          say<"sheet.bank">(with<"unit">(unit_cell(unit::volt))),
                          say<"sheet.bank">(with<"unit">(unit_cell(unit::ampere))),
                          say<"sheet.bank">(with<"unit">(unit_cell(unit::watt)))}) {
        table.columns.push_back({.head = std::move(head), .number = true});
    }
    // Each irradiance is listed twice: the rows of just uncovered panels are the second half.
    for (std::size_t i = 0; i < sheet.rows.size(); ++i) {
        table.rows.push_back(row_of(sheet.rows[i], 2 * i >= sheet.rows.size() && i > 0));
    }
    return table;
}

Sentence sheet_title(const MeterSheet& sheet) {
    return say<"sheet.title">(with<"circuit">(sheet.title));
}

Sentence sheet_caption(const MeterSheet& sheet) {
    return say<"sheet.caption">(with<"circuit">(sheet.title), with<"legend">(legend()));
}

Sentence sheet_plain_title() {
    return say<"sheet.plain_title">();
}

}  // namespace heatmatch
