#include "heatmatch/answer/wiring_list.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/answer/wires_table.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr double hot_end_c = 60.0;  // a run in air of this temperature or above is in the hot zone;
                                    // from memory
constexpr int sun = 1;
constexpr int shade = 2;
constexpr int hot_end = 3;

/// Zone of a run: runs of the bank, buried runs and runs in hot air are hot.
int zone_of(const RunParts& run, const WireCheck* check) {
    const Surroundings& around = run.run.surroundings;
    const bool hot = around.air_c && *around.air_c > hot_end_c;
    const bool runs_away = check != nullptr && check->runaway;
    if (run.run.carries != Carried::array || around.kind == SurroundingsKind::bed || hot ||
        runs_away)
        return hot_end;
    return around.kind == SurroundingsKind::sunlit ? sun : shade;
}

Sentence zone_cell(int zone) {
    const Amount place = number(zone, 0);
    if (zone == sun) return say<"wiring.sun">(with<"zone">(place));
    return zone == shade ? say<"wiring.shade">(with<"zone">(place))
                         : say<"wiring.hot_end">(with<"zone">(place));
}

Sentence part_and_limit(const std::string& id, double limit) {
    return say<"cell.part_limit">(with<"part">(id), with<"limit">(limit, unit::celsius));
}

Sentence wire_cell(const RunParts& run) {
    if (!run.wire) return unknown_cell();
    const Amount size{.value = run.wire->area_mm2, .unit = unit::square_millimetre};
    Amount other = size;
    other.shown = Shown::other;
    return say<"wiring.wire">(with<"wire">(run.wire->id), with<"size">(size), with<"other">(other),
                              with<"conductor">(shown_choice(run.wire->conductor)));
}

Amount degrees(double celsius) {
    return {.value = celsius, .unit = unit::celsius, .decimals = 0};
}

/// `?` followed by the unit of degrees, as a number would be.
Sentence whole_degrees(const std::optional<double>& celsius) {
    if (celsius) return sentence_of(degrees(*celsius));
    return say<"wiring.unknown_degrees">(with<"degrees">(unit_cell(unit::celsius)));
}

Sentence hot_cell(const WireCheck* check) {
    if (check == nullptr) return unknown_cell();
    if (check->runaway) return say<"wiring.runaway">();
    if (hot_unknown(*check)) return say<"wiring.may_melt">();
    Sentence celsius = whole_degrees(check->conductor_c);
    if (check->severity == Severity::none) return celsius;
    return say<"wiring.hot">(with<"degrees">(std::move(celsius)),
                             with<"severity">(severity_cell(check->severity)));
}

Sentence limit_cell(const WireCheck* check) {
    if (check == nullptr || !check->limiting_part) return unknown_cell();
    std::optional<double> limit_c;
    for (const WireLimit& limit : check->limits) {
        if (limit.what == check->limiting_part && !limit_c) limit_c = limit.limit_c;
    }
    return say<"wiring.limit">(with<"degrees">(whole_degrees(limit_c)),
                               with<"part">(shown_choice(check->limiting_part)));
}

Sentence would_do_cell(const WireCheck* check) {
    const bool fine = check == nullptr || check->severity == Severity::none ||
                      check->severity == Severity::caution;
    if (fine || !check->sufficient_wire) return {};
    return say<"wiring.would_do">(with<"wire">(check->sufficient_wire->id),
                                  with<"gauge">(check->sufficient_gauge));
}

Sentences devices_on(const Circuit& circuit, const std::string& run) {
    Sentences devices;
    for (const PlacedDevice& placed : circuit.devices) {
        if (placed.device.run != run) continue;
        devices.push_back(say<"wiring.device">(with<"device">(placed.control.id),
                                               with<"duty">(shown_choice(placed.device.duty))));
    }
    return devices;
}

/// The last check of that run; null without one.
const WireCheck* check_of(std::span<const WireCheck> checks, const std::string& run) {
    const WireCheck* found = nullptr;
    for (const WireCheck& check : checks) {
        if (check.run == run) found = &check;
    }
    return found;
}

Sentences row_of(const Circuit& circuit, const RunParts& run, const WireCheck* check) {
    const Sentences devices = devices_on(circuit, run.run.name);
    return {zone_cell(zone_of(run, check)),
            say<"wiring.run">(with<"run">(run.run.name)),
            choice_cell(run.run.carries),
            sentence_of(Amount{.value = run.run.length_m, .unit = unit::metre}),
            wire_cell(run),
            run.insulation ? part_and_limit(run.insulation->id, run.insulation->limit_c)
                           : unknown_cell(),
            hot_cell(check),
            limit_cell(check),
            run.connector ? part_and_limit(run.connector->id, run.connector->limit_c)
                          : say<"wiring.not_known">(),
            devices.empty() ? Sentence{} : say<"wiring.devices">(with<"devices">(devices)),
            would_do_cell(check)};
}

/// Removes columns that are empty for every run.
void leave_out_empty(Table& table) {
    if (table.rows.empty()) return;
    for (std::size_t i = table.columns.size(); i-- > 0;) {
        const bool said = std::any_of(table.rows.begin(), table.rows.end(),
                                      [i](const Sentences& row) { return !row[i].text().empty(); });
        if (said) continue;
        const auto place = static_cast<std::ptrdiff_t>(i);
        table.columns.erase(table.columns.begin() + place);
        for (Sentences& row : table.rows) row.erase(row.begin() + place);
    }
}

}  // namespace

Table wiring_list(const Circuit& circuit, std::span<const WireCheck> checks) {
    Table table;
    for (Sentence head :
         {say<"wiring.zone">(), say<"wires.run">(), say<"wiring.carries">(), say<"wiring.length">(),
          say<"wires.wire">(), say<"wiring.insulation">(), say<"wiring.at_worst">(),
          say<"wiring.limit_by">(), say<"wiring.joints">(), say<"wiring.on_it">(),
          say<"wiring.would_do_head">()}) {
        table.columns.push_back({.head = std::move(head)});
    }
    std::vector<std::pair<int, Sentences>> rows;
    for (const RunParts& run : circuit.runs) {
        const WireCheck* check = check_of(checks, run.run.name);
        rows.emplace_back(zone_of(run, check), row_of(circuit, run, check));
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (auto& [zone, row] : rows) table.rows.push_back(std::move(row));
    leave_out_empty(table);
    return table;
}

Sentences wiring_reasons(const Circuit& circuit, std::span<const WireCheck> checks) {
    Sentences reasons;
    for (const WireCheck& check : checks) {
        reasons.push_back(
            say<"wiring.reason">(with<"run">(check.run), with<"says">(check.sentence)));
    }
    for (Sentence& device : devices_on(circuit, {})) {
        reasons.push_back(say<"wiring.nowhere">(with<"device">(std::move(device))));
    }
    return reasons;
}

}  // namespace heatmatch
