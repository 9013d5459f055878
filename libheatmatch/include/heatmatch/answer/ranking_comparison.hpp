#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// A pairing in one of two rankings.
struct RankedPairing {
    std::optional<int> place{};  //!< from 1 on; nothing where it was not kept
    std::optional<double> heat{};
    std::optional<double> headroom{};
    std::optional<double> price{};       //!< of what is to be bought
    std::optional<Severity> severity{};  //!< danger where rejected; nothing: not known
    std::string worst{};                 //!< name of its worst margin

    [[nodiscard]] bool in_danger() const { return severity == Severity::danger; }
};

/// What became of one pairing.
struct PairingMove {
    std::string group{};
    std::string panels{};
    std::string element{};
    std::string bank{};
    RankedPairing before{};
    RankedPairing after{};
};

/// Two rankings side by side, in the order of the later one.
struct RankingComparison {
    std::string before{};  //!< what they are called
    std::string after{};
    bool by_season = false;  //!< heat is kWh of the season, else W over the conditions
    std::vector<PairingMove> moves{};
    std::map<std::string, std::size_t> reasons_before{};  //!< margin -> pairings it rejected
    std::map<std::string, std::size_t> reasons_after{};
    std::string currency{};  //!< of the prices after
    Sentences remarks{};
};

/// The best of both, a row for each pairing; what became of the first place is its title, what the
/// columns mean and what else there is to say its legend. `margins`: beside each danger its name.
[[nodiscard]] Table comparison_table(const RankingComparison& comparison, bool margins = true);

/// Which of them became, or were, a danger, by margin.
[[nodiscard]] Sentences comparison_dangers(const RankingComparison& comparison);

/// What to know where only one of two rankings knows a season.
[[nodiscard]] Sentence unlike_rankings_remark();

}  // namespace heatmatch
