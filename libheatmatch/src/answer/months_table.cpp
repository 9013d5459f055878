#include "heatmatch/answer/months_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

Sentence daily(double kwh) {
    return sentence_of(fitted(kwh, unit::kilowatt_hour));
}

Sentence hours(double value) {
    return number_cell(value, 0, unit::hour);
}

Sentences row_of(const DarkHours& dark) {
    return {dark.month == 0 ? say<"months.all">() : month_word(dark.month),
            number_cell(dark.days, 0),
            daily(dark.available_kwh_day),
            daily(dark.delivered_kwh_day),
            daily(dark.to_space_kwh_day),
            hours(dark.dark_hours),
            hours(dark.above_target_hours),
            hours(dark.above_target_unheated_hours),
            number_cell(dark.lift_k, 1, unit::kelvin),
            number_cell(dark.required_lift_k, 1, unit::kelvin),
            degrees_cell(dark.lowest_c)};
}

}  // namespace

Table months_table(const DayAnswer& answer) {
    Table table{.title = say<"months.title">(),
                .columns = {{.head = say<"head.month">()}},
                .legend = {say<"months.legend">(with<"unit">(unit_cell(unit::kilowatt_hour)))}};
    for (Sentence head :
         {say<"months.days">(), say<"months.most">(), say<"months.in">(), say<"months.space">(),
          say<"months.dark">(with<"unit">(unit_cell(unit::hour))),
          say<"months.warm">(with<"unit">(unit_cell(unit::hour))), say<"months.without">(),
          say<"months.warmer">(with<"unit">(unit_cell(unit::kelvin))),
          say<"months.wanted">(with<"unit">(unit_cell(unit::kelvin))),
          say<"months.lowest">(with<"unit">(unit_cell(unit::celsius)))}) {
        table.columns.push_back({.head = std::move(head), .number = true});
    }
    for (const DarkHours& month : answer.months) table.rows.push_back(row_of(month));
    if (answer.months.size() != 1) table.rows.push_back(row_of(answer.all));
    return table;
}

Sentence nights_title() {
    return say<"months.nights">();
}

}  // namespace heatmatch
