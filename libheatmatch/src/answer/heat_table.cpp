#include "heatmatch/answer/heat_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

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
    return say<"heat.title">(
        with<"degrees">(unit_cell(unit::celsius)), with<"watts">(watts), with<"load">(load),
        with<"hours">(candidate.circuit.heat->store->charge_hours, unit::hour, 6));
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
    const TemperatureBand& band = point->sheath_band;
    const auto& sheath = candidate.circuit.bank.sheath;
    std::optional<double> limit_c;
    if (sheath) limit_c = sheath->verdict_limit_c;
    table.rows.push_back({say<"head.sheath">(), degrees_cell(band.low_c),
                          degrees_cell(band.typical_c), degrees_cell(band.high_c),
                          degrees_cell(point->sheath_c), degrees_cell(limit_c)});
    for (const auto& [name, called] : judged_margins()) {
        const Margin* margin = last_of(candidate, name);
        if (margin == nullptr || !margin->value) continue;
        table.rows.push_back(
            {called, {}, {}, {}, degrees_cell(margin->value), degrees_cell(margin->limit)});
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
