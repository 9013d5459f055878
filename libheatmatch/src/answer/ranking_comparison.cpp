#include "heatmatch/answer/ranking_comparison.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/answer/ranking_table.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr int shown_places = 12;

bool is_shown(const PairingMove& move) {
    const int beyond = shown_places + 1;
    return std::min(move.after.place.value_or(beyond), move.before.place.value_or(beyond)) <=
           shown_places;
}

Sentence count_cell(double count) {
    return number_cell(count, 0);
}

Sentence number_or_none(const std::optional<double>& value, int decimals) {
    return value ? number_cell(*value, decimals) : say<"cell.none">();
}

std::optional<double> change_of(const PairingMove& move) {
    if (!move.before.heat || !move.after.heat) return std::nullopt;
    return *move.after.heat - *move.before.heat;
}

Sentence change_cell(const PairingMove& move) {
    const auto change = change_of(move);
    if (!change) return say<"cell.none">();
    return sentence_of(Amount{.value = *change, .shown = Shown::change, .decimals = 0});
}

Sentence danger_of(const RankedPairing& pairing, bool margins = true) {
    if (!margins || pairing.worst.empty()) return say<"compared.danger">();
    return say<"compared.danger_of">(with<"margin">(shown_margin_name(pairing.worst)));
}

/// A place, or why there is none.
Sentence place_cell(const RankedPairing& pairing, bool margins) {
    if (pairing.place) return count_cell(*pairing.place);
    return pairing.in_danger() ? danger_of(pairing, margins) : say<"cell.none">();
}

Sentence name_of(const PairingMove& move) {
    return say<"cell.pairing">(with<"array">(move.group + ' ' + move.panels),
                               with<"element">(move.element), with<"bank">(move.bank));
}

Sentences row_of(const PairingMove& move, bool margins) {
    const bool known = move.after.place || move.after.in_danger();
    return {place_cell(move.after, margins),
            place_cell(move.before, margins),
            say<"cell.panels">(with<"group">(move.group), with<"panels">(move.panels)),
            say<"cell.elements">(with<"element">(move.element), with<"bank">(move.bank)),
            number_or_none(move.after.heat, 0),
            number_or_none(move.before.heat, 0),
            change_cell(move),
            number_or_none(known ? move.after.headroom : move.before.headroom, 2),
            number_or_none(move.after.price, 0)};
}

/// Present place of the pairing that was first before.
Sentence where_now(const RankedPairing& after) {
    if (after.place) return say<"compared.now_at_place">(with<"place">(number(*after.place, 0)));
    if (!after.severity) return say<"compared.no_longer_kept">();
    return say<"compared.now_a_danger">(with<"danger">(danger_of(after)));
}

/// Former place of the pairing that is first now.
Sentence where_before(const RankedPairing& before) {
    if (before.place) return say<"compared.at_place">(with<"place">(number(*before.place, 0)));
    if (!before.severity) return say<"compared.not_kept">();
    return say<"compared.a_danger">(with<"danger">(danger_of(before)));
}

Sentence unit_word(const RankingComparison& comparison) {
    return unit_cell(comparison.by_season ? unit::kilowatt_hour : unit::watt);
}

const PairingMove* first_of(const RankingComparison& comparison,
                            RankedPairing PairingMove::*ranked) {
    const auto found =
        std::find_if(comparison.moves.begin(), comparison.moves.end(),
                     [ranked](const PairingMove& move) { return (move.*ranked).place == 1; });
    return found == comparison.moves.end() ? nullptr : &*found;
}

/// Change of the first place.
Sentence verdict_of(const RankingComparison& comparison) {
    const PairingMove* first = first_of(comparison, &PairingMove::after);
    const PairingMove* then = first_of(comparison, &PairingMove::before);
    if (then == nullptr) {
        if (first == nullptr) return say<"compared.none_before">();
        return say<"compared.none_before_one_now">(with<"pairing">(name_of(*first)));
    }
    if (first == nullptr) {
        Sentence fate = then->after.in_danger()
                            ? say<"compared.a_danger">(with<"danger">(danger_of(then->after)))
                            : say<"compared.not_kept">();
        return say<"compared.none_now">(with<"pairing">(name_of(*then)),
                                        with<"fate">(std::move(fate)));
    }
    if (first == then) {
        return say<"compared.stays">(with<"pairing">(name_of(*first)),
                                     with<"change">(change_cell(*first)),
                                     with<"unit">(unit_word(comparison)));
    }
    return say<"compared.another">(
        with<"pairing">(name_of(*first)), with<"was">(where_before(first->before)),
        with<"other">(name_of(*then)), with<"where">(where_now(then->after)));
}

Sentence reasons_of(const std::map<std::string, std::size_t>& reasons) {
    if (reasons.empty()) return say<"compared.no_reason">();
    Sentences named;
    for (const auto& [margin, count] : reasons) {
        named.push_back(
            say<"compared.reason">(with<"margin">(shown_margin_name(margin)),
                                   with<"count">(number(static_cast<double>(count), 0))));
    }
    return say<"cell.listed">(with<"list">(std::move(named)));
}

Sentences legend_of(const RankingComparison& comparison) {
    Sentences legend{say<"compared.legend">(
        with<"after">(comparison.after), with<"before">(comparison.before),
        with<"heat">(comparison.by_season ? say<"compared.by_season">()
                                          : say<"compared.by_power">()),
        with<"money">(comparison.currency.empty()
                          ? Sentence{}
                          : say<"compared.money">(with<"currency">(comparison.currency))))};
    if (comparison.reasons_before != comparison.reasons_after) {
        legend.push_back(
            say<"compared.reasons">(with<"now">(reasons_of(comparison.reasons_after)),
                                    with<"were">(reasons_of(comparison.reasons_before))));
    }
    legend.insert(legend.end(), comparison.remarks.begin(), comparison.remarks.end());
    return legend;
}

}  // namespace

Table comparison_table(const RankingComparison& comparison, bool margins) {
    Table table{.title = verdict_of(comparison), .legend = legend_of(comparison)};
    const auto text = [](Sentence head) { return TableColumn{.head = std::move(head)}; };
    const auto numbers = [](Sentence head) {
        return TableColumn{.head = std::move(head), .number = true};
    };
    table.columns = {numbers(say<"compared.now">()),
                     numbers(say<"compared.was">()),
                     text(say<"head.panels">()),
                     text(say<"head.elements">()),
                     numbers(unit_word(comparison)),
                     numbers(say<"compared.was">()),
                     numbers(say<"compared.change">()),
                     numbers(say<"head.headroom_left">()),
                     numbers(buy_head(comparison.currency, false))};
    for (const PairingMove& move : comparison.moves) {
        if (is_shown(move)) table.rows.push_back(row_of(move, margins));
    }
    return table;
}

Sentences comparison_dangers(const RankingComparison& comparison) {
    struct Danger {
        bool now = false;
        Sentence danger{};
        Sentences pairings{};
    };
    std::vector<Danger> dangers;
    const auto add = [&](bool now, const RankedPairing& ranked, const PairingMove& move) {
        if (ranked.place || !ranked.in_danger()) return;
        Sentence danger = danger_of(ranked);
        auto same = std::find_if(dangers.begin(), dangers.end(), [&](const Danger& known) {
            return known.now == now && known.danger == danger;
        });
        if (same == dangers.end()) {
            same = dangers.insert(same, {.now = now, .danger = std::move(danger)});
        }
        same->pairings.push_back(name_of(move));
    };
    for (const PairingMove& move : comparison.moves) {
        if (!is_shown(move)) continue;
        add(true, move.after, move);
        add(false, move.before, move);
    }
    Sentences told;
    for (Danger& one : dangers) {
        told.push_back(
            one.now ? say<"compared.now_dangers">(with<"danger">(std::move(one.danger)),
                                                  with<"pairings">(std::move(one.pairings)))
                    : say<"compared.before_dangers">(with<"danger">(std::move(one.danger)),
                                                     with<"pairings">(std::move(one.pairings))));
    }
    return told;
}

Sentence unlike_rankings_remark() {
    return say<"compared.unlike">();
}

}  // namespace heatmatch
