#include "heatmatch/answer/heat_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

/// A margin with a temperature of its own, and the name of its row.
struct Judged {
    std::string_view margin{};
    Sentence called{};
};

std::array<Judged, 6> judged_margins() {
    return {{{"coil temperature", say<"heat.coil">()},
             {"settled sand", say<"heat.settled">()},
             {"stagnation", say<"heat.stagnation">()},
             {"terminal temperature", say<"heat.terminal">()},
             {"end seal", say<"heat.end_seal">()},
             {"hot tail insulation", say<"heat.hot_tail">()}}};
}

/// The last margin of that name; null without one.
const Margin* last_of(const Candidate& candidate, std::string_view name) {
    const auto found = std::find_if(candidate.margins().rbegin(), candidate.margins().rend(),
                                    [name](const Margin& margin) { return margin.name == name; });
    return found == candidate.margins().rend() ? nullptr : &*found;
}

/// Temperature limit of wood beside the store; empty where none is stated.
Sentence wood_limit(const Candidate& candidate) {
    const auto found =
        std::find_if(candidate.margins().begin(), candidate.margins().end(),
                     [](const Margin& margin) { return margin.name == "wall and lid"; });
    if (found == candidate.margins().end() || !found->limit) return {};
    return degrees_cell(found->limit);
}

Sentence title_of(const Candidate& candidate, const HeatPoint& point) {
    const Amount load{
        .value = point.w_per_cm, .unit = unit::watt_per_cm, .decimals = Amount::fit_decimals};
    const Amount watts{
        .value = candidate.bright.element_power_w, .unit = unit::watt, .decimals = 0};
    const auto degrees = with<"degrees">(unit_cell(unit::celsius));
    const auto hours = with<"hours">(candidate.circuit.heat->store->charge_hours, unit::hour, 6);
    if (candidate.circuit.bank.unlike) {
        return say<"heat.title_unlike">(degrees, with<"watts">(watts), with<"load">(load), hours);
    }
    return say<"heat.title">(degrees, with<"watts">(watts), with<"load">(load), hours);
}

Sentences row_of_margin(Sentence called, const Margin& margin) {
    return {std::move(called), {}, {}, {}, degrees_cell(margin.value), degrees_cell(margin.limit)};
}

Sentences sheath_row(Sentence called, const HeatPoint& point, const std::optional<Sheath>& sheath) {
    const TemperatureBand& band = point.sheath_band;
    std::optional<double> limit_c;
    if (sheath) limit_c = sheath->verdict_limit_c;
    return {std::move(called),         degrees_cell(band.low_c),     degrees_cell(band.typical_c),
            degrees_cell(band.high_c), degrees_cell(point.sheath_c), degrees_cell(limit_c)};
}

void add_element_rows(Table& table, const Candidate& candidate, const HeatPoint& point) {
    table.rows.push_back(sheath_row(say<"head.sheath">(), point, candidate.circuit.bank.sheath));
    for (const auto& [name, called] : judged_margins()) {
        const Margin* margin = last_of(candidate, name);
        if (margin == nullptr || !margin->value) continue;
        table.rows.push_back(row_of_margin(called, *margin));
    }
}

/// The same for every unlike element.
void add_rows_of_each(Table& table, const Candidate& candidate) {
    const std::vector<std::size_t> distinct = candidate.circuit.bank.unlike->distinct();
    const auto of = [](const Sentence& called, const std::string& subject) {
        return say<"heat.of_element">(with<"what">(called), with<"subject">(Name{subject}));
    };
    for (const ElementSeen& one : elements_seen(candidate.circuit, candidate.bright)) {
        if (std::find(distinct.begin(), distinct.end(), one.element) == distinct.end()) continue;
        table.rows.push_back(
            sheath_row(of(say<"head.sheath">(), one.title), *one.heat, one.circuit.bank.sheath));
    }
    for (const auto& [name, called] : judged_margins()) {
        for (const Margin& margin : candidate.margins()) {
            if (margin.name != name || !margin.value) continue;
            const bool of_element = margin.subject.starts_with("element ");
            table.rows.push_back(
                row_of_margin(of_element ? of(called, margin.subject) : called, margin));
        }
    }
}

}  // namespace

Table heat_table(const Candidate& candidate) {
    Table table{.title = say<"heat.not_computed">(), .columns = {TableColumn{}}};
    for (Sentence head : {say<"head.low">(), say<"head.typical">(), say<"head.high">(),
                          say<"head.judged">(), say<"head.limit">()}) {
        table.columns.push_back({.head = std::move(head), .number = true});
    }
    const auto point = heat_of(candidate.circuit, candidate.bright);
    if (!point) return table;
    table.title = title_of(candidate, *point);
    if (candidate.circuit.bank.unlike) {
        add_rows_of_each(table, candidate);
    } else {
        add_element_rows(table, candidate, *point);
    }
    const Sentence bulk =
        candidate.circuit.heat->liquid ? say<"heat.liquid_mean">() : say<"heat.bed_mean">();
    table.rows.push_back({bulk, {}, degrees_cell(point->bed_mean_c), {}, {}, {}});
    const Sentence wood = wood_limit(candidate);
    table.rows.push_back({say<"heat.wall">(), {}, {}, {}, degrees_cell(point->wall_c), wood});
    table.rows.push_back({say<"heat.lid">(), {}, {}, {}, degrees_cell(point->lid_c), wood});
    return table;
}

}  // namespace heatmatch
