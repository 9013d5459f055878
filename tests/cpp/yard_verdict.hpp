#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>

#include "heatmatch/setting/installation.hpp"

/// What is compared of a margin between two installations.
struct YardVerdict {
    int likely = 0;                    //!< 0 none to 3 danger; not assessed as bad as it may be
    int worst = 0;                     //!< the same with unstated facts at their careful ends
    bool danger = false;               //!< passing it is one
    std::optional<double> headroom{};  //!< careful one
    std::string unit{};
    std::string sentence{};
    std::optional<double> value{};
    std::optional<double> limit{};
};

/// By name and subject of the margin.
using YardVerdicts = std::map<std::pair<std::string, std::string>, YardVerdict>;

/// Every margin of the existing circuit; empty where the library refuses the installation.
[[nodiscard]] std::optional<YardVerdicts> judge_yard(const heatmatch::Installation& yard);

/// How a margin improved; empty if it did not, or by no more than `slack` of its headroom. Its
/// likely severity counts where requested.
[[nodiscard]] std::string kinder(const YardVerdict& before, const YardVerdict& after, bool likely,
                                 double slack = 0.0);

/// The same margin with a sign error: good for bad, headroom turned over.
[[nodiscard]] YardVerdict turned_over(const YardVerdict& verdict);
