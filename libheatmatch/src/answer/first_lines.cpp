#include "answer/first_lines.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/answer/first_screen.hpp"
#include "heatmatch/answer/season_table.hpp"
#include "heatmatch/answer/verdict.hpp"
#include "heatmatch/base/constants.hpp"
#include "heatmatch/setting/target_amount.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Amount rounded(double value, const Unit& unit) {
    return {.value = value, .unit = unit, .decimals = 0};
}

Amount short_kwh(double value) {
    return {.value = value, .unit = unit::kilowatt_hour, .digits = 2};
}

/// A day's heat with its unit.
Amount whole_fitted(double value) {
    return {.value = value,
            .unit = unit::kilowatt_hour,
            .shown = Shown::whole,
            .decimals = Amount::fit_decimals};
}

Amount percent(double share) {
    return rounded(100.0 * share, unit::percent);
}

/// The kind of part in the words of a shop: a label up to its first comma.
std::string shop_kind(const std::string& label) {
    return label.substr(0, label.find(','));
}

Sentence hookup_words(Hookup hookup) {
    if (hookup.count() == 1) return {};
    if (hookup.parallel == 1) return say<"first.in_series">();
    if (hookup.series == 1) return say<"first.in_parallel">();
    return say<"first.both">(with<"branches">(number(hookup.parallel, 0)),
                             with<"each">(number(hookup.series, 0)));
}

Sentence whole_money(double amount, const std::string& currency) {
    const Amount sum = rounded(amount, unit::money);
    if (currency.empty()) return sentence_of(sum);
    return say<"cell.money">(with<"amount">(sum), with<"currency">(currency));
}

/// First and last month of a season whose months follow each other, else nothing.
Sentence months_of(const Season& season) {
    const std::vector<int>& months = season.months;
    if (months.size() < 2 || months.size() > 11) return {};
    for (std::size_t from = 0; from < months.size(); ++from) {
        const int first = months[from];
        const auto in_season = [&months](int month) {
            const int of_year = (month + 11) % 12 + 1;
            return std::find(months.begin(), months.end(), of_year) != months.end();
        };
        bool follows = !in_season(first + 11);
        for (std::size_t i = 0; i < months.size(); ++i) {
            follows = follows && in_season(first + static_cast<int>(i));
        }
        if (!follows) continue;
        const int last = (first + static_cast<int>(months.size()) - 2) % 12 + 1;
        return say<"first.months">(with<"from">(month_word(first)), with<"to">(month_word(last)));
    }
    return {};
}

Sentence share_of_need(double share) {
    const auto shown = with<"percent">(percent(share));
    if (share < 0.05) return say<"first.hardly">(shown);
    if (share < 0.25) return say<"first.small">(shown);
    if (share < 0.6) return say<"first.part">(shown);
    return share < 1.0 ? say<"first.most">(shown) : say<"first.all">();
}

Sentence space_line(const Candidate& candidate) {
    const auto& space = candidate.space;
    if (!space || !space->known() || !candidate.season) return say<"first.no_need">();
    const double daily = candidate.season->mean_kwh_per_day();
    if (!space->needed_kwh_per_day) {
        const double steady_w = 1000.0 * daily / hours_of_day;
        return say<"first.warmer">(with<"lift">(space->lift_k(steady_w), unit::kelvin, 2));
    }
    const auto target = with<"target">(target_amount(space->target_c.value_or(0.0)));
    const double need = *space->needed_kwh_per_day;
    if (need <= 0.0) return say<"first.never_needed">(target);
    return say<"first.needs">(target, with<"need">(short_kwh(need)),
                              with<"share">(share_of_need(daily / need)));
}

Sentence item_of(const BillLine& line, const std::string& currency) {
    const auto price = with<"money">(whole_money(line.typical().value_or(0.0), currency));
    if (line.kind == PartKind::wire) {
        return say<"first.wire">(with<"length">(line.to_buy, unit::metre, 2),
                                 with<"part">(line.label), price);
    }
    return say<"first.item">(
        with<"count">(number(line.to_buy, 0)),
        with<"part">(line.kind == PartKind::element ? shop_kind(line.label) : line.label), price);
}

}  // namespace

Sentence shop_panels(const Circuit& circuit) {
    if (circuit.unlike) {
        return say<"first.array">(
            with<"array">(circuit.array_title()),
            with<"match">(say<"first.match">(with<"ohm">(circuit.label_match_ohm(), unit::ohm))));
    }
    const auto group = with<"group">(circuit.owned.group);
    const Hookup panels = circuit.panels;
    const auto count = with<"count">(number(panels.count(), 0));
    const Panel& panel = circuit.panel.panel;
    const double ohm = panel.v_mp.value_or(panel.v_oc) / panel.i_mp.value_or(panel.i_sc) *
                       panels.resistance_factor();
    const auto match = with<"match">(say<"first.match">(with<"ohm">(ohm, unit::ohm)));
    if (panels.count() == 1) return say<"first.panel">(group, count, match);
    if (panels.parallel == 1) return say<"first.panels_series">(group, count, match);
    if (panels.series == 1) return say<"first.panels_parallel">(group, count, match);
    return say<"first.panels_both">(group, with<"strings">(number(panels.parallel, 0)),
                                    with<"each">(number(panels.series, 0)), match);
}

Sentence shop_elements(const Circuit& circuit) {
    if (circuit.bank.unlike) return sentence_of(Name{circuit.bank.title()});
    const Element& element = circuit.bank.element;
    Sentence rating;
    if (element.rated_w && element.rated_v) {
        rating = say<"first.rating">(with<"watts">(rounded(*element.rated_w, unit::watt)),
                                     with<"volts">(rounded(*element.rated_v, unit::volt)));
    }
    return say<"first.elements">(with<"count">(number(circuit.bank.hookup.count(), 0)),
                                 with<"kind">(shop_kind(element.label)),
                                 with<"rating">(std::move(rating)),
                                 with<"hookup">(hookup_words(circuit.bank.hookup)));
}

Sentence into_line(const Circuit& circuit) {
    return say<"first.into">(with<"elements">(shop_elements(circuit)),
                             with<"ohm">(circuit.bank.typical_ohm(), unit::ohm));
}

Sentence short_circuit(const Circuit& circuit, bool rated) {
    const Element& element = circuit.bank.element;
    if (rated && element.rated_w) {
        return say<"first.short_rated">(with<"group">(circuit.owned.group),
                                        with<"panels">(circuit.panels.label()),
                                        with<"kind">(shop_kind(element.label)),
                                        with<"watts">(rounded(*element.rated_w, unit::watt)),
                                        with<"bank">(circuit.bank.hookup.label()));
    }
    return say<"first.short">(with<"group">(circuit.owned.group),
                              with<"panels">(circuit.panels.label()),
                              with<"kind">(shop_kind(circuit.bank.element.label)),
                              with<"bank">(circuit.bank.hookup.label()));
}

Sentences heat_lines(const Candidate& candidate) {
    if (!candidate.season) {
        return {say<"first.power">(with<"mean">(rounded(candidate.mean_power_w(), unit::watt)),
                                   with<"low">(number(candidate.mean_power_low_w(), 0)),
                                   with<"high">(number(candidate.mean_power_high_w(), 0)))};
    }
    const Season& season = *candidate.season;
    Sentence darkest;
    if (const auto month = darkest_month(season)) {
        const double least = season.kwh_per_day.at(static_cast<std::size_t>(*month - 1));
        darkest = say<"first.darkest">(with<"least">(whole_fitted(least)),
                                       with<"month">(month_word(*month)));
    }
    const auto daily = [&season](double total) {
        Amount shown = fitted(total / season.days, unit::kilowatt_hour);
        shown.shown = Shown::number;
        return shown;
    };
    return {say<"first.a_day">(
                with<"mean">(whole_fitted(season.mean_kwh_per_day())),
                with<"months">(months_of(season)), with<"low">(daily(season.kwh_low)),
                with<"high">(daily(season.kwh_high)), with<"darkest">(std::move(darkest))),
            space_line(candidate)};
}

Sentence bill_line(const Bill& bill) {
    const auto total = bill.typical();
    if (!total) return say<"first.no_bill">();
    std::vector<const BillLine*> lines;
    for (const BillLine& line : bill.lines) {
        if (line.to_buy > 0.0) lines.push_back(&line);
    }
    if (lines.empty()) return say<"first.nothing_to_buy">();
    std::stable_sort(lines.begin(), lines.end(), [](const BillLine* a, const BillLine* b) {
        return a->typical().value_or(0.0) > b->typical().value_or(0.0);
    });
    constexpr std::size_t most = 4;
    Sentences items;
    for (const BillLine* line : lines) {
        if (items.size() == most && lines.size() > most) {
            const auto rest = static_cast<double>(lines.size() - most);
            items.push_back(say<"first.more_items">(with<"count">(number(rest, 0))));
            break;
        }
        items.push_back(item_of(*line, bill.currency));
    }
    Sentence of_budget;
    if (bill.budget) {
        const auto budget = with<"budget">(whole_money(*bill.budget, bill.currency));
        const double high = bill.high().value_or(0.0);
        const bool beyond = *total <= *bill.budget && high > *bill.budget;
        of_budget = beyond
                        ? say<"first.of_budget_beyond">(
                              budget, with<"low">(rounded(bill.low().value_or(0.0), unit::money)),
                              with<"high">(rounded(high, unit::money)))
                        : say<"first.of_budget">(budget);
    }
    const Amount sum = rounded(*total, unit::money);
    return say<"first.bill">(
        with<"bill">(bill.budget ? sentence_of(sum) : whole_money(*total, bill.currency)),
        with<"of_budget">(std::move(of_budget)),
        with<"items">(say<"first.items">(with<"items">(std::move(items)))));
}

Sentences limit_lines(const Candidate& candidate) {
    Sentence nearest;
    if (candidate.heat_unknown()) {
        nearest = nearest_sentence(candidate);
    } else if (const Margin* margin = candidate.nearest_limit()) {
        const auto name = with<"margin">(margin_cell(margin->name));
        const auto left = with<"left">(percent(*margin->headroom));
        nearest =
            margin->value && margin->limit
                ? say<"first.nearest_limit">(name, with<"value">(*margin->value, margin->unit),
                                             with<"limit">(*margin->limit, margin->unit), left)
                : say<"first.nearest_only">(name, left);
    }
    constexpr double arc_v = 80.0;
    const double shock_v = candidate.site.counts_as_wet() ? 30.0 : 60.0;
    return {std::move(nearest),
            say<"first.cold">(with<"cold">(candidate.circuit.cold_voltage_v(), unit::volt),
                              with<"shock">(shock_v, unit::volt), with<"arc">(arc_v, unit::volt))};
}

Sentence checks_line(const Candidate& candidate) {
    const CheckCounts counts = check_counts(candidate);
    Sentence dangers;
    if (counts.dangers > 0) {
        dangers = say<"first.checks_danger">(with<"count">(number(counts.dangers, 0)));
    }
    return say<"first.checks_line">(
        with<"made">(number(counts.made, 0)), with<"none">(number(counts.no_finding, 0)),
        with<"cautions">(number(counts.cautions, 0)), with<"warnings">(number(counts.warnings, 0)),
        with<"dangers">(std::move(dangers)), with<"not_made">(number(counts.not_made, 0)));
}

}  // namespace heatmatch
