#include "heatmatch/answer/marked_ranking.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "heatmatch/match/margins/shown_margin.hpp"
#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr std::string_view build_mark = ">";

bool same_circuit(const Candidate& a, const Candidate& b) {
    return a.circuit.title() == b.circuit.title() &&
           a.circuit.bank.element.id == b.circuit.bank.element.id;
}

Sentence marked_place(const Ranking& ranking, const Candidate& candidate) {
    const auto place = place_of(ranking, candidate);
    const Sentence shown =
        place ? number_cell(static_cast<double>(*place), 0) : sentence_of(Name{""});
    if (is_recommended(ranking, candidate)) {
        return say<"ranking.build_place">(with<"place">(shown));
    }
    return undecided_margins(candidate).empty() ? shown
                                                : say<"ranking.open_place">(with<"place">(shown));
}

/// Whether a circuit has a part of the installation.
template <typename Has>
bool none_has(const Ranking& ranking, const Has& has) {
    const bool recommended = ranking.recommended && has(ranking.recommended->circuit);
    return !recommended &&
           std::none_of(ranking.candidates.begin(), ranking.candidates.end(),
                        [&has](const Candidate& each) { return has(each.circuit); });
}

/// The check that rejects the pairing with it that is nearest to its limit.
template <typename Has>
Sentence why_rejected(const Ranking& ranking, const Has& has) {
    const Candidate* nearest = nullptr;
    for (const Candidate& each : ranking.rejected) {
        if (!has(each.circuit) || each.worst() == nullptr) continue;
        if (nearest == nullptr || each.smallest_headroom() > nearest->smallest_headroom()) {
            nearest = &each;
        }
    }
    if (nearest == nullptr) return say<"unused.unknown">();
    return sentence_of(Name{shown_margin_name(nearest->worst()->name)});
}

}  // namespace

std::optional<std::size_t> place_of(const Ranking& ranking, const Candidate& candidate) {
    for (std::size_t i = 0; i < ranking.candidates.size(); ++i) {
        if (same_circuit(ranking.candidates[i], candidate)) return i + 1;
    }
    return std::nullopt;
}

bool is_recommended(const Ranking& ranking, const Candidate& candidate) {
    return ranking.recommended && same_circuit(*ranking.recommended, candidate);
}

Table marked_table(const Ranking& ranking, std::size_t top, const RankingTableOptions& options) {
    std::vector<const Candidate*> shown;
    const std::size_t count = std::min(top, ranking.candidates.size());
    for (std::size_t i = 0; i < count; ++i) shown.push_back(&ranking.candidates[i]);
    const bool among = std::any_of(
        shown.begin(), shown.end(),
        [&ranking](const Candidate* candidate) { return is_recommended(ranking, *candidate); });
    if (ranking.recommended && !among) shown.insert(shown.begin(), &*ranking.recommended);
    Table table = ranking_table(shown, options);
    for (std::size_t i = 0; i < shown.size(); ++i) {
        table.rows[i].front() = marked_place(ranking, *shown[i]);
    }
    return table;
}

Sentences marks_legend(const Ranking& ranking) {
    const auto& all = ranking.candidates;
    Sentences legend;
    if (ranking.recommended) {
        legend.push_back(say<"ranking.short_build">(with<"mark">(build_mark)));
    }
    const bool open = std::any_of(all.begin(), all.end(), [](const Candidate& candidate) {
        return !undecided_margins(candidate).empty();
    });
    if (open) legend.push_back(say<"ranking.short_open">(with<"mark">(unknown_cell())));
    return legend;
}

Sentences short_legend(const Ranking& ranking) {
    Sentences legend = marks_legend(ranking);
    legend.push_back(say<"ranking.short_head">());
    return legend;
}

Sentence nearest_instead(const Ranking& ranking, const Candidate& shown) {
    return say<"ranking.nearest_instead">(with<"lacking">(ranking.lacking),
                                          with<"circuit">(shown.circuit.title()));
}

Sentences unused_lines(const Ranking& ranking, const Installation& installation) {
    Sentences lines;
    for (const OwnedPanels& owned : installation.panels) {
        const auto has = [&owned](const Circuit& circuit) {
            return circuit.owned.group == owned.group;
        };
        if (!none_has(ranking, has)) continue;
        lines.push_back(say<"unused.panels">(with<"group">(owned.group),
                                             with<"reason">(why_rejected(ranking, has))));
    }
    for (const AllowedElements& owned : installation.elements) {
        if (owned.element.empty()) continue;
        const auto has = [&owned](const Circuit& circuit) {
            return circuit.bank.element.id == owned.element;
        };
        if (!none_has(ranking, has)) continue;
        lines.push_back(say<"unused.element">(with<"count">(number(owned.count, 0)),
                                              with<"element">(owned.element),
                                              with<"reason">(why_rejected(ranking, has))));
    }
    return lines;
}

}  // namespace heatmatch
