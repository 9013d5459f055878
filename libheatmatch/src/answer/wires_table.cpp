#include "heatmatch/answer/wires_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr std::size_t shown_insulations = 4;
constexpr double at_terminal_m = 1e-9;

Sentence gauge_cell(const Circuit& circuit, const std::string& run) {
    for (const RunParts& parts : circuit.runs) {
        if (parts.run.name == run && parts.wire) {
            return sentence_of(
                Amount{.value = parts.wire->area_mm2, .unit = unit::square_millimetre});
        }
    }
    return unknown_cell();
}

Sentence hot_cell(const WireCheck& check) {
    if (check.runaway) return say<"wires.runaway">();
    return hot_unknown(check) ? unknown_cell() : degrees_cell(check.conductor_c);
}

std::optional<double> limit_c(const WireCheck& check) {
    for (const WireLimit& limit : check.limits) {
        if (limit.what == check.limiting_part) return limit.limit_c;
    }
    return std::nullopt;
}

Sentence reach_of(const InsulationReach& reach) {
    const Amount limit{.value = reach.limit_c, .unit = unit::celsius, .digits = 4};
    if (*reach.from_m == 0.0) {
        return say<"wires.insulation">(with<"insulation">(reach.insulation), with<"limit">(limit));
    }
    return say<"wires.insulation_from">(with<"insulation">(reach.insulation), with<"limit">(limit),
                                        with<"from">(*reach.from_m, unit::metre, 2));
}

/// The suitable insulation with the lowest limit, and the number of others.
Sentence would_do(const Sentence& where, std::vector<InsulationReach> reach) {
    if (reach.empty()) return {};
    std::stable_sort(reach.begin(), reach.end(),
                     [](const auto& a, const auto& b) { return a.limit_c < b.limit_c; });
    const std::size_t shown = std::min(reach.size(), shown_insulations);
    Sentences insulations;
    for (std::size_t i = 0; i < shown; ++i) insulations.push_back(reach_of(reach[i]));
    const std::size_t more = reach.size() - shown;
    return say<"wires.reach">(
        with<"where">(where), with<"insulations">(std::move(insulations)),
        with<"more">(more == 0
                         ? Sentence{}
                         : say<"wires.more">(with<"count">(number(static_cast<double>(more), 0)))));
}

/// Insulations that are suitable at the element.
Sentences reach_lines(const WireCheck& check) {
    std::vector<InsulationReach> near;
    std::vector<InsulationReach> far;
    for (const InsulationReach& reach : check.reach) {
        if (!reach.from_m) continue;
        (*reach.from_m <= at_terminal_m ? near : far).push_back(reach);
    }
    return {would_do(say<"wires.at_terminal">(), std::move(near)),
            would_do(say<"wires.further_on">(), std::move(far))};
}

/// What a suitable wire costs for the length of its run, there and back.
Sentence price_of(const Wire& wire, const std::string& run, const Circuit* circuit) {
    const auto per_m = wire.price.typical();
    if (circuit == nullptr || !per_m) return {};
    for (const RunParts& parts : circuit->runs) {
        if (parts.run.name != run) continue;
        const Sentence amount = number_cell(2.0 * parts.run.length_m * *per_m, 0, unit::money);
        if (wire.price.currency.empty()) return say<"wires.price">(with<"money">(amount));
        return say<"wires.price">(with<"money">(
            say<"cell.money">(with<"amount">(amount), with<"currency">(wire.price.currency))));
    }
    return {};
}

/// Without a remedy, and with the same reason.
bool alike(const WireCheck& one, const WireCheck& other) {
    const bool silent = one.severity == Severity::none && !one.sufficient_wire;
    return silent && other.severity == one.severity && !other.sufficient_wire &&
           other.sentence == one.sentence;
}

/// Whether another insulation would change the finding.
bool asks_for_insulation(const WireCheck& check) {
    if (check.severity == Severity::none) return false;
    return check.severity != Severity::caution || check.limiting_part == WirePart::insulation;
}

}  // namespace

bool hot_unknown(const WireCheck& check) {
    return check.at_element && check.severity == Severity::not_assessed;
}

Table wires_table(const Circuit& circuit, std::span<const WireCheck> checks) {
    const auto numbers = [](Sentence head) {
        return TableColumn{.head = std::move(head), .number = true};
    };
    const Sentence degrees = unit_cell(unit::celsius);
    Table table{.title = say<"wires.title">(with<"circuit">(circuit.title())),
                .columns = {{.head = say<"wires.run">()},
                            {.head = say<"wires.wire">()},
                            numbers(say<"wires.gauge">()),
                            numbers(unit_cell(unit::ampere)),
                            numbers(say<"wires.code">(with<"amperes">(unit_cell(unit::ampere)))),
                            numbers(say<"wires.hot">(with<"degrees">(degrees))),
                            numbers(say<"head.limit">()),
                            {.head = say<"wires.limited_by">()}},
                .legend = {say<"wires.legend">(with<"degrees">(degrees))}};
    for (const WireCheck& check : checks) {
        table.rows.push_back(
            {name_cell(check.run), name_cell(check.wire), gauge_cell(circuit, check.run),
             number_cell(check.current_a, 1, unit::ampere),
             check.corrected_ampacity_a ? number_cell(*check.corrected_ampacity_a, 1, unit::ampere)
                                        : unknown_cell(),
             hot_cell(check), degrees_cell(limit_c(check)),
             check.limiting_part ? choice_cell(check.limiting_part) : unknown_cell()});
    }
    return table;
}

std::vector<WireLines> wire_lines(std::span<const WireCheck> checks, const Circuit* circuit) {
    std::vector<WireLines> lines;
    std::vector<bool> reported(checks.size());
    for (std::size_t place = 0; place < checks.size(); ++place) {
        const WireCheck& check = checks[place];
        // Runs with the same finding are listed together.
        if (reported[place]) continue;
        Sentences runs{name_cell(check.run)};
        for (std::size_t i = place + 1; i < checks.size(); ++i) {
            if (!alike(check, checks[i])) continue;
            runs.push_back(name_cell(checks[i].run));
            reported[i] = true;
        }
        WireLines line{.reason = say<"wires.reason">(
                           with<"severity">(severity_cell(check.severity)),
                           with<"run">(std::move(runs)), with<"says">(check.sentence))};
        if (check.sufficient_wire) {
            line.remedies.push_back(say<"wires.would_do">(
                with<"wire">(check.sufficient_wire->id), with<"gauge">(check.sufficient_gauge),
                with<"price">(price_of(*check.sufficient_wire, check.run, circuit))));
        }
        if (check.at_element && asks_for_insulation(check)) {
            for (Sentence& reach : reach_lines(check)) {
                if (!reach.empty()) line.remedies.push_back(std::move(reach));
            }
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace heatmatch
