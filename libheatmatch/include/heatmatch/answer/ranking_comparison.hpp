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

/// What changed for one pairing.
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
    std::string before{};  //!< names of the two rankings
    std::string after{};
    bool by_season = false;  //!< heat in kWh of the season, otherwise in W over the conditions
    std::vector<PairingMove> moves{};
    std::map<std::string, std::size_t> reasons_before{};  //!< margin -> pairings it rejected
    std::map<std::string, std::size_t> reasons_after{};
    std::string currency{};  //!< of the prices after
    Sentences remarks{};
};

/// The best pairings of both rankings, one row each. The title reports what became of the first
/// place; the legend explains the columns and lists remarks. `margins`: name the margin beside each
/// danger.
[[nodiscard]] Table comparison_table(const RankingComparison& comparison, bool margins = true);

/// Pairings that became, or no longer are, a danger, by margin.
[[nodiscard]] Sentences comparison_dangers(const RankingComparison& comparison);

/// Remark for two rankings of which only one has a season.
[[nodiscard]] Sentence unlike_rankings_remark();

}  // namespace heatmatch
