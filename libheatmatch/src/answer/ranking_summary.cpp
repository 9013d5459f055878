#include "heatmatch/answer/ranking_summary.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Amount count_of(std::size_t count) {
    return number(static_cast<double>(count), 0);
}

Sentence pairings(const Ranking& ranking) {
    const Amount count = count_of(ranking.evaluated);
    return ranking.evaluated == 1 ? say<"ranking.pairing">(with<"count">(count))
                                  : say<"ranking.pairings">(with<"count">(count));
}

std::size_t total_of(const Ranking& ranking) {
    std::size_t total = 0;
    for (const auto& [name, count] : ranking.reasons) total += count;
    return total;
}

bool about_money(const std::string& reason) {
    return reason == "budget";
}

Amount volts_of(const Ranking& ranking) {
    return {.value = ranking.volts_max.value_or(0.0), .unit = unit::volt, .decimals = 0};
}

/// A sentence, and how many pairings were left out for their voltage.
Sentence with_left_out(const Ranking& ranking, Sentence said) {
    if (ranking.above_volts == 0) return said;
    return say<"ranking.above_volts">(with<"said">(std::move(said)),
                                      with<"count">(count_of(ranking.above_volts)),
                                      with<"volts">(volts_of(ranking)));
}

}  // namespace

Sentence reasons_sentence(const Ranking& ranking) {
    if (ranking.reasons.empty()) {
        return with_left_out(ranking,
                             say<"ranking.rejected_none">(with<"pairings">(pairings(ranking))));
    }
    std::vector<std::pair<std::string, std::size_t>> counts(ranking.reasons.begin(),
                                                            ranking.reasons.end());
    std::stable_sort(counts.begin(), counts.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    Sentences reasons;
    for (const auto& [name, count] : counts) {
        reasons.push_back(say<"ranking.reason">(with<"margin">(shown_margin_name(name)),
                                                with<"count">(count_of(count))));
    }
    return with_left_out(ranking,
                         say<"ranking.rejected">(with<"pairings">(pairings(ranking)),
                                                 with<"total">(count_of(total_of(ranking))),
                                                 with<"reasons">(std::move(reasons))));
}

Sentence short_ranking(const Ranking& ranking) {
    return with_left_out(ranking, say<"ranking.short">(with<"pairings">(pairings(ranking)),
                                                       with<"total">(count_of(total_of(ranking)))));
}

Sentence nothing_left(const Ranking& ranking) {
    if (ranking.evaluated == 0 && ranking.above_volts > 0) {
        return say<"ranking.nothing_below">(with<"volts">(volts_of(ranking)));
    }
    if (total_of(ranking) < ranking.evaluated) {
        return say<"ranking.nothing_asked">(with<"top">(count_of(0)));
    }
    const auto money = std::count_if(ranking.reasons.begin(), ranking.reasons.end(),
                                     [](const auto& reason) { return about_money(reason.first); });
    if (money == 0) return say<"ranking.nothing_without_danger">();
    return static_cast<std::size_t>(money) == ranking.reasons.size()
               ? say<"ranking.nothing_affordable">()
               : say<"ranking.nothing_left">();
}

Sentence nothing_to_rank() {
    return say<"ranking.nothing_to_rank">();
}

Sentence best_title(const Ranking& ranking) {
    if (!ranking.candidates.empty()) return say<"ranking.best_title">();
    return say<"ranking.rejected_title">(with<"nothing_left">(nothing_left(ranking)));
}

Sentence shown_title(const Ranking& ranking) {
    if (!ranking.candidates.empty()) return reasons_sentence(ranking);
    return say<"ranking.shown_title">(with<"nothing_left">(nothing_left(ranking)),
                                      with<"reasons">(reasons_sentence(ranking)));
}

Sentence front_title() {
    return say<"ranking.front_title">();
}

Sentence front_letters_title(const Ranking& ranking, std::size_t shown) {
    const std::size_t all = ranking.pareto.size();
    return say<"ranking.front_letters">(with<"shown">(
        shown < all
            ? say<"ranking.some_of">(with<"shown">(count_of(shown)), with<"all">(count_of(all)))
            : sentence_of(count_of(all))));
}

Sentence strongest_rejected(const Ranking& ranking) {
    if (ranking.rejected.empty()) return {};
    const Candidate& best = ranking.rejected.front();
    const Margin* worst = best.worst();
    if (worst == nullptr) return {};
    const Amount heat{.value = best.objective(),
                      .unit = best.season ? unit::kilowatt_hour : unit::watt,
                      .decimals = 0};
    return say<"ranking.strongest_rejected">(with<"circuit">(best.circuit.title()),
                                             with<"heat">(heat), with<"why">(worst->whole()));
}

}  // namespace heatmatch
