#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/match/plan/plan.hpp"

namespace heatmatch {

/// A single change with which the best plan of a yard has more heat.
struct Unlock {
    Installation changed{};             //!< the installation with that change
    double kwh = 0.0;                   //!< more heat of the season
    std::optional<double> price{};      //!< more on the bill; negative: less
    std::optional<double> crosses_v{};  //!< 30 (where wet), 60 or 80 V, if its arrays now exceed it
    Sentence change{};
    Sentence said{};

    /// Money for each kWh of one season; infinite where a bill is not known.
    [[nodiscard]] double price_per_kwh() const;
};

/// Changes with less heat than that share of the plan's are left out.
inline constexpr double least_unlocked_share = 0.01;

/// What would free circuits with more heat, the most heat first: devices for what the margins of
/// rejected circuits lack, a run's wire chosen anew, and goals that reject plans. Every change is
/// tried: only those remain with which the best plan at the headroom of `plan` has at least 1 %
/// more heat. `plan` is that of the same catalog, installation and options.
[[nodiscard]] std::vector<Unlock> unlocks(const Parts& catalog, const Installation& installation,
                                          const Plan& plan, const RankOptions& options = {});

/// The unlocks in words, numbered by falling heat, then their order by money for each kWh; of those
/// without a known bill only the heat. One sentence where there are none.
[[nodiscard]] Sentences unlock_lines(std::span<const Unlock> unlocks, const std::string& currency);

}  // namespace heatmatch
