#include "heatmatch/answer/circuits_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "heatmatch/answer/ranking_table.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr std::size_t heat_column = 4;

/// Heat of all circuits per day of the season, or their mean power.
Sentence heat_of_all(std::span<const Candidate* const> circuits) {
    double sum = 0.0;
    bool season = true;
    for (const Candidate* circuit : circuits) season = season && circuit->season.has_value();
    for (const Candidate* circuit : circuits) {
        sum += season ? circuit->season->mean_kwh_per_day() : circuit->mean_power_w();
    }
    return season ? sentence_of(fitted(sum, unit::kilowatt_hour)) : number_cell(sum, 0, unit::watt);
}

/// Purchase price of all; unknown where one is, or where currencies differ.
Sentence price_of_all(std::span<const Candidate* const> circuits) {
    Candidate all{.price_to_buy = 0.0, .currency = circuits.front()->currency};
    for (const Candidate* circuit : circuits) {
        if (!circuit->price_to_buy || circuit->currency != all.currency) return unknown_cell();
        *all.price_to_buy += *circuit->price_to_buy;
    }
    return price_cell(all);
}

}  // namespace

Table circuits_table(std::span<const Candidate* const> circuits) {
    Table table = ranking_table(circuits, {.share = false});
    if (circuits.empty()) return table;
    table.columns.front().head = say<"head.circuit">();
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        table.rows[i].front() = name_cell(circuits[i]->circuit.name);
    }
    Sentences all(table.columns.size());
    all.front() = say<"circuits.all">();
    all[heat_column] = heat_of_all(circuits);
    // Only the sheath comes after the price, where there is a store.
    all[table.columns.size() - (with_store(circuits) ? 2 : 1)] = price_of_all(circuits);
    table.rows.push_back(std::move(all));
    return table;
}

}  // namespace heatmatch
