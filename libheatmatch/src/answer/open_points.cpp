#include "heatmatch/answer/open_points.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

#include "heatmatch/match/margins/touch_limit.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

using Names = std::span<const std::string_view>;

// Margins of one subject: the first open one is named.
constexpr auto limit_names =
    std::to_array<std::string_view>({"independent limit", "limit acts in time", "limit supply"});
constexpr auto pressure_names = std::to_array<std::string_view>({"pressure"});
constexpr auto disconnect_names = std::to_array<std::string_view>({"disconnect"});
constexpr auto bonding_names = std::to_array<std::string_view>({"bonding"});
constexpr auto earth_names = std::to_array<std::string_view>({"earth fault"});

/// A warning among these margins means that the thing is missing, late or not stated.
bool is_open(const Margin& margin) {
    return margin.severity == Severity::not_assessed || margin.severity == Severity::warning ||
           margin.worst_severity == Severity::danger;
}

Sentence said_of(const Margin& margin) {
    if (margin.missing.empty()) return margin.whole();
    Sentence more;
    if (margin.missing.size() > 1) {
        const auto others = static_cast<double>(margin.missing.size() - 1);
        more = say<"open.more_fields">(with<"count">(number(others, 0)));
    }
    return say<"open.state">(with<"margin">(margin_cell(margin.name)),
                             with<"field">(name_cell(margin.missing.front())),
                             with<"more">(std::move(more)));
}

void add_first_open(std::vector<OpenPoint>& points, const Candidate& candidate, Names names) {
    for (const std::string_view name : names) {
        for (const Margin& margin : candidate.margins()) {
            if (margin.name != name || margin.severity == Severity::danger || !is_open(margin)) {
                continue;
            }
            points.push_back({.severity = margin.severity, .said = said_of(margin)});
            return;
        }
    }
}

/// Whether one of these margins names the fact: then it is listed once.
bool asked_already(const std::vector<Margin>& margins, const UnstatedFact& fact) {
    constexpr auto asking = std::to_array<std::string_view>({"bonding", "pressure"});
    return std::any_of(margins.begin(), margins.end(), [&](const Margin& margin) {
        const bool one = std::find(asking.begin(), asking.end(), margin.name) != asking.end();
        return one && std::any_of(margin.missing.begin(), margin.missing.end(),
                                  [&fact](const std::string& field) {
                                      return field == fact.field ||
                                             field == fact.part + '.' + fact.field;
                                  });
    });
}

}  // namespace

std::string_view severity_mark(Severity severity) {
    switch (severity) {
        case Severity::danger:
            return "▲";
        case Severity::warning:
            return "△";
        case Severity::caution:
            return "◆";
        case Severity::not_assessed:
            return "?";
        case Severity::none:
            break;
    }
    return "·";
}

Sentence marked_severity(Severity severity) {
    return say<"open.marked">(with<"mark">(severity_mark(severity)),
                              with<"severity">(severity_cell(severity)));
}

std::vector<OpenPoint> open_points(const Candidate& candidate) {
    std::vector<OpenPoint> points;
    const std::vector<Margin>& margins = candidate.margins();
    for (const Margin& margin : margins) {
        if (margin.severity != Severity::danger) continue;
        points.push_back({.severity = Severity::danger, .said = margin.whole()});
    }
    const auto fact = candidate.deciding_fact();
    if (fact && !asked_already(margins, *fact)) {
        points.push_back(
            {.severity = Severity::warning,
             .said = say<"open.decides">(with<"field">(fact->field), with<"part">(fact->part))});
    }
    add_first_open(points, candidate, limit_names);
    add_first_open(points, candidate, pressure_names);
    if (candidate.circuit.cold_voltage_v() > touch_limit_v(candidate.site)) {
        for (const Names names :
             {Names(disconnect_names), Names(bonding_names), Names(earth_names)}) {
            add_first_open(points, candidate, names);
        }
    }
    return points;
}

bool is_for_building(const Candidate& candidate) {
    return open_points(candidate).empty();
}

Sentence building_mark(const Candidate& candidate) {
    const auto count = open_points(candidate).size();
    if (count == 0) return {};
    return count == 1 ? say<"open.one">()
                      : say<"open.many">(with<"count">(number(static_cast<double>(count), 0)));
}

}  // namespace heatmatch
