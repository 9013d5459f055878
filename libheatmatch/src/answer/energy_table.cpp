#include "heatmatch/answer/energy_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <utility>

namespace heatmatch {

using answer_sentences::say;

Table energy_table(const DayRun& run) {
    Table table{.title = say<"energy.title">(with<"circuit">(run.title),
                                             with<"days">(run.days, unit::none, 6)),
                .columns = {{.head = say<"energy.head">(with<"unit">(
                                 Amount{.unit = unit::kilowatt_hour, .shown = Shown::unit}))},
                            {.head = say<"energy.all_days">(), .number = true},
                            {.head = say<"energy.a_day">(), .number = true}}};
    const auto row = [&](Sentence name, double kwh) {
        table.rows.push_back({std::move(name), number_cell(kwh, 2, unit::kilowatt_hour),
                              number_cell(kwh / run.days, 2, unit::kilowatt_hour)});
    };
    const DayEnergy& energy = run.energy;
    const auto of_store = [&](Sentence name) {
        return run.circuits > 1 ? say<"energy.of_all">(with<"what">(std::move(name)))
                                : std::move(name);
    };
    row(say<"energy.available">(), energy.available_kwh);
    row(say<"energy.in">(), energy.delivered_kwh);
    row(say<"energy.wire">(), energy.wire_kwh);
    if (run.heats_space) {
        row(run.circuits > 1 ? say<"energy.to_space_of_all">() : say<"energy.to_space">(),
            energy.to_space_kwh);
        row(of_store(say<"energy.elsewhere">()), energy.outside_kwh);
    } else {
        row(of_store(say<"energy.given_off">()), energy.to_space_kwh + energy.outside_kwh);
    }
    row(of_store(say<"energy.stored">()), energy.stored_kwh);
    if (energy.steam_kwh > 0.0) row(say<"energy.steam">(), energy.steam_kwh);
    return table;
}

Sentence dark_days_title(int days) {
    return say<"energy.dark_days">(with<"days">(number(days, 0)));
}

}  // namespace heatmatch
