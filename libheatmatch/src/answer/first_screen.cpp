#include "heatmatch/answer/first_screen.hpp"

#include "answer/cells.hpp"
#include "answer/first_lines.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/answer/marked_ranking.hpp"
#include "heatmatch/answer/open_points.hpp"
#include "heatmatch/answer/season_table.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr std::size_t most_open_lines = 4;

ScreenBlock block(Sentence label, Sentences lines) {
    ScreenBlock made{.label = std::move(label)};
    for (Sentence& line : lines) {
        if (!line.empty()) made.lines.push_back({.said = std::move(line)});
    }
    return made;
}

ScreenBlock open_block(const std::vector<OpenPoint>& points) {
    ScreenBlock made{.label = say<"first.open">()};
    for (const OpenPoint& point : points) {
        if (made.lines.size() == most_open_lines && points.size() > most_open_lines + 1) {
            const auto rest = static_cast<double>(points.size() - most_open_lines);
            made.lines.push_back({.said = say<"first.more_open">(with<"count">(number(rest, 0)))});
            break;
        }
        made.lines.push_back({.severity = point.severity, .said = point.said});
    }
    return made;
}

ScreenLine status_of(const Candidate& candidate, const std::vector<OpenPoint>& points) {
    if (points.empty()) return {.said = say<"first.estimate">()};
    if (points.front().severity == Severity::danger) {
        return {.severity = Severity::danger,
                .said = say<"first.danger">(with<"why">(points.front().said))};
    }
    return {.severity = Severity::warning, .said = building_mark(candidate)};
}

void add_candidate(FirstScreen& screen, const Candidate& candidate, Sentence label) {
    std::vector<OpenPoint> points = open_points(candidate);
    const bool danger = !points.empty() && points.front().severity == Severity::danger;
    screen.blocks.push_back(
        block(std::move(label), {shop_panels(candidate.circuit), into_line(candidate.circuit)}));
    screen.blocks.push_back(block(say<"first.heat">(), heat_lines(candidate)));
    if (!danger) screen.blocks.push_back(block(say<"first.buy">(), {bill_line(candidate.bill)}));
    screen.blocks.push_back(block(say<"first.limit">(), limit_lines(candidate)));
    if (danger) points.erase(points.begin());  // it is the status
    if (!points.empty()) screen.blocks.push_back(open_block(points));
    screen.blocks.push_back(block(say<"first.checks">(), {checks_line(candidate)}));
    screen.blocks.push_back(block(say<"first.unlooked">(), {say<"first.never">()}));
    constexpr double dry_v = 60.0;
    constexpr double wet_v = 30.0;
    screen.closing = {
        say<"first.kills">(with<"dry">(dry_v, unit::volt), with<"wet">(wet_v, unit::volt)),
        say<"first.codes">()};
}

Sentence way_cell(AlternativeKind kind, const Site& site) {
    switch (kind) {
        case AlternativeKind::most_heat:
            return say<"first.most_heat">();
        case AlternativeKind::least_money:
            return say<"first.least_money">();
        case AlternativeKind::below_touch_voltage:
            return say<"first.below">(with<"volts">(touch_limit_v(site), unit::volt));
        case AlternativeKind::coolest:
            return say<"first.coolest">();
        case AlternativeKind::all_owned:
            return say<"first.all_owned">();
    }
    return {};
}

/// Elements of another rating have the same name there: then the watts tell them apart.
bool needs_rating(const Ranking& ranking, const Candidate& candidate) {
    const auto same_name = [&candidate](const Candidate& other) {
        return short_circuit(other.circuit) == short_circuit(candidate.circuit) &&
               other.circuit.bank.element.id != candidate.circuit.bank.element.id;
    };
    return same_name(*ranking.recommended) ||
           std::any_of(ranking.alternatives.begin(), ranking.alternatives.end(),
                       [&](const Alternative& each) { return same_name(each.candidate); });
}

Sentences row_of(AlternativeKind kind, const Candidate& candidate, bool rated) {
    const Sentence heat =
        candidate.season
            ? sentence_of(fitted(candidate.season->mean_kwh_per_day(), unit::kilowatt_hour))
            : number_cell(candidate.mean_power_w(), 0, unit::watt);
    return {way_cell(kind, candidate.site),
            short_circuit(candidate.circuit, rated),
            heat,
            price_cell(candidate),
            headroom_left_cell(candidate),
            number_cell(candidate.circuit.cold_voltage_v(), 0, unit::volt)};
}

Table others_of(const Ranking& ranking) {
    const Candidate& first = *ranking.recommended;
    Table table{.title = say<"first.others">()};
    const auto add = [&table](Sentence head, bool number) {
        table.columns.push_back({.head = std::move(head), .number = number});
    };
    add(say<"first.way">(), false);
    add(say<"first.circuit">(), false);
    add(ranking.by_season ? say<"head.daily">() : unit_cell(unit::watt), true);
    // The currency is in the head, so that the cells remain numbers.
    add(first.currency.empty() ? say<"first.bill_head">() : name_cell(first.currency), true);
    add(say<"first.left">(), true);
    add(say<"first.cold_volts">(), true);
    bool below = first.circuit.cold_voltage_v() <= touch_limit_v(first.site);
    for (const Alternative& each : ranking.alternatives) {
        below |= each.candidate.circuit.cold_voltage_v() <= touch_limit_v(first.site);
        table.rows.push_back(
            row_of(each.kind, each.candidate, needs_rating(ranking, each.candidate)));
    }
    if (!below) {
        Sentences none(table.columns.size());
        none[0] = way_cell(AlternativeKind::below_touch_voltage, first.site);
        none[1] = say<"first.none">();
        table.rows.push_back(std::move(none));
    }
    return table;
}

}  // namespace

FirstScreen first_screen(const Candidate& candidate) {
    FirstScreen screen{.status = status_of(candidate, open_points(candidate))};
    add_candidate(screen, candidate, say<"first.row">());
    return screen;
}

FirstScreen first_screen(const Ranking& ranking, const Candidate& row) {
    FirstScreen screen = first_screen(row);
    if (is_recommended(ranking, row)) {
        screen.blocks.front().label = say<"first.build">();
        return screen;
    }
    if (screen.status.severity == Severity::danger) return screen;
    Sentence place;
    if (const auto found = place_of(ranking, row)) {
        place = say<"first.place">(with<"place">(number(static_cast<double>(*found), 0)));
    }
    Sentence why = ranking.lacking;
    if (ranking.recommended) {
        why = say<"first.recommended">(with<"circuit">(ranking.recommended->circuit.title()));
    }
    screen.status = {.severity = Severity::warning,
                     .said = say<"first.not_recommended">(with<"place">(std::move(place)),
                                                          with<"why">(std::move(why)))};
    return screen;
}

FirstScreen first_screen(const Ranking& ranking) {
    if (ranking.recommended) {
        FirstScreen screen = first_screen(ranking, *ranking.recommended);
        screen.others = others_of(ranking);
        return screen;
    }
    FirstScreen screen{.status = {.severity = Severity::not_assessed,
                                  .said = say<"first.nothing">(with<"lacking">(ranking.lacking))}};
    const auto& shown = ranking.candidates.empty() ? ranking.rejected : ranking.candidates;
    if (!shown.empty()) add_candidate(screen, shown.front(), say<"first.nearest">());
    return screen;
}

}  // namespace heatmatch
