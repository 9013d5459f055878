#pragma once

#include <optional>
#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// One line of the first screen, with a severity where it reports one.
struct ScreenLine {
    std::optional<Severity> severity{};
    Sentence said{};

    friend bool operator==(const ScreenLine&, const ScreenLine&) = default;
};

/// Lines under one short heading.
struct ScreenBlock {
    Sentence label{};
    std::vector<ScreenLine> lines{};

    friend bool operator==(const ScreenBlock&, const ScreenBlock&) = default;
};

/// The first screen as data: which circuit, its heat, what to buy, the nearest
/// limit, what is open, the checks; then other ways as a table. Every face lays it out.
struct FirstScreen {
    ScreenLine status{};  //!< a danger, "not for building", or that nothing can be recommended
    std::vector<ScreenBlock> blocks{};
    Table others{};  //!< without rows where there is no other way
    Sentences closing{};

    friend bool operator==(const FirstScreen&, const FirstScreen&) = default;
};

/// Of the recommended circuit of a ranking; without one, what is missing and the first of the
/// ranking.
[[nodiscard]] FirstScreen first_screen(const Ranking& ranking);
/// Of a row of a ranking: where it is not the recommended circuit, the status says so and why.
[[nodiscard]] FirstScreen first_screen(const Ranking& ranking, const Candidate& row);
/// Of one circuit, without other ways.
[[nodiscard]] FirstScreen first_screen(const Candidate& candidate);

/// Elements in the words of a shop: number, kind, rating and hook-up.
[[nodiscard]] Sentence shop_elements(const Circuit& circuit);
/// The panels of a circuit: group, number and hook-up.
[[nodiscard]] Sentence shop_panels(const Circuit& circuit);

}  // namespace heatmatch
