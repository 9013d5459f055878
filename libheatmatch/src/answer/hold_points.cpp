#include "heatmatch/answer/hold_points.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

/// A row of them, with an empty cell to sign.
Sentences held(Sentence job, Sentence hold, Sentence who) {
    return {std::move(job), std::move(hold), std::move(who), {}};
}

/// Unknown contents count as water.
bool may_hold_water(const Candidate& candidate) {
    const auto& heat = candidate.circuit.heat;
    return heat == nullptr || heat->liquid;
}

}  // namespace

Table hold_points_table(std::span<const Candidate* const> circuits) {
    Table table{.title = say<"hold.title">(),
                .columns = {{.head = say<"hold.job">()},
                            {.head = say<"hold.point">()},
                            {.head = say<"hold.who">()},
                            {.head = say<"hold.signed">()}},
                .legend = {say<"hold.legend">()}};
    if (circuits.empty()) return table;
    double cold_v = 0.0;
    bool water = false;
    for (const Candidate* each : circuits) {
        cold_v = std::max(cold_v, each->circuit.cold_voltage_v());
        water = water || may_hold_water(*each);
    }
    table.rows = {
        held(say<"hold.permit">(), say<"hold.until_permit">(), say<"hold.by_authority">()),
        held(say<"hold.bonding">(), say<"hold.until_bonding">(), say<"hold.by_electrician">()),
        held(say<"hold.insulation">(), say<"hold.until_insulation">(),
             say<"hold.by_electrician">()),
        held(say<"hold.limit">(), say<"hold.until_limit">(), say<"hold.by_electrician">()),
        held(say<"hold.supply">(), say<"hold.until_supply">(), say<"hold.by_electrician">())};
    if (water) {
        table.rows.push_back(
            held(say<"hold.water">(), say<"hold.until_water">(), say<"hold.by_plumber">()));
    }
    table.rows.push_back(held(
        say<"hold.live">(with<"cold">(Amount{.value = cold_v, .unit = unit::volt, .decimals = 0})),
        say<"hold.until_live">(), say<"hold.by_electrician">()));
    table.rows.push_back(
        held(say<"hold.plugs">(), say<"hold.until_plugs">(), say<"hold.by_electrician">()));
    return table;
}

}  // namespace heatmatch
