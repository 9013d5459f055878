#include "heatmatch/answer/kept_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <utility>

#include "heatmatch/answer/ranking_table.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Sentence quantity(const std::optional<double>& value, const Unit& unit) {
    return value ? sentence_of(Amount{.value = *value, .unit = unit}) : say<"cell.none">();
}

template <class Read>
Sentence of_season(const KeptChoice& kept, const Read& read) {
    return kept.candidate->season ? read(*kept.candidate->season) : unknown_cell();
}

Sentence sheath(const Candidate& candidate) {
    const auto point = heat_of(candidate.circuit, candidate.bright);
    return point ? degrees_cell(point->sheath_c) : unknown_cell();
}

Sentence worst(const Candidate& candidate) {
    const Margin* margin = candidate.worst();
    if (margin == nullptr) return {};
    return say<"cell.judged">(with<"severity">(severity_cell(margin->severity)),
                              with<"margin">(shown_margin_name(margin->name)));
}

}  // namespace

Table kept_table(std::span<const KeptChoice> kept) {
    Table table{.title = say<"kept.title">(), .columns = {TableColumn{}}};
    for (const KeptChoice& one : kept) table.columns.push_back({.head = name_cell(one.name)});
    const auto row = [&](Sentence head, const auto& read) {
        Sentences cells{std::move(head)};
        for (const KeptChoice& one : kept) cells.push_back(read(one));
        table.rows.push_back(std::move(cells));
    };
    using Kept = const KeptChoice&;
    row(say<"kept.installation">(),
        [](Kept one) { return say<"kept.place">(with<"place">(one.place)); });
    row(say<"head.panels">(), [](Kept one) { return panels_cell(one.candidate->circuit); });
    row(say<"head.elements">(), [](Kept one) { return elements_cell(one.candidate->circuit); });
    row(say<"kept.ohms">(), [](Kept one) {
        return sentence_of(Amount{.value = one.candidate->circuit.bank.typical_ohm()});
    });
    row(say<"kept.season">(), [](Kept one) {
        return of_season(one, [](const Season& season) { return number_cell(season.kwh, 0); });
    });
    row(say<"kept.day">(), [](Kept one) {
        return of_season(
            one, [](const Season& season) { return number_cell(season.mean_kwh_per_day(), 2); });
    });
    row(say<"kept.share">(), [](Kept one) {
        return of_season(one, [](const Season& season) {
            return sentence_of(percent_number(season.harvest_fraction()));
        });
    });
    row(say<"kept.element_power">(),
        [](Kept one) { return number_cell(one.candidate->bright.element_power_w, 0); });
    row(say<"kept.sheath">(with<"degrees">(unit_cell(unit::celsius))),
        [](Kept one) { return sheath(*one.candidate); });
    row(say<"kept.headroom">(), [](Kept one) { return headroom_left_cell(*one.candidate); });
    row(say<"kept.worst">(), [](Kept one) { return worst(*one.candidate); });
    row(say<"kept.not_assessed">(),
        [](Kept one) { return number_cell(one.candidate->not_assessed(), 0); });
    row(say<"kept.to_buy">(), [](Kept one) { return price_sentence(*one.candidate); });
    row(say<"kept.tilt">(), [](Kept one) { return quantity(one.tilt_deg, unit::degree); });
    row(say<"kept.sun">(), [](Kept one) { return quantity(one.sun_pct, unit::percent); });
    row(say<"kept.wire">(),
        [](Kept one) { return one.wire.empty() ? say<"cell.none">() : name_cell(one.wire); });
    row(say<"kept.length">(), [](Kept one) { return quantity(one.length_m, unit::metre); });
    row(say<"kept.conductivity">(),
        [](Kept one) { return quantity(one.k20_w_mk, unit::watt_per_m_k); });
    row(say<"kept.record_low">(),
        [](Kept one) { return quantity(one.record_low_c, unit::celsius); });
    return table;
}

Sentence nothing_kept() {
    return say<"kept.nothing">();
}

}  // namespace heatmatch
