#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>

#include "heatmatch/setting/installation.hpp"

/// Values of a margin that are compared between two installations.
struct YardVerdict {
    int likely = 0;       //!< 0 none to 3 danger; not assessed counts as its consequence
    int worst = 0;        //!< the same with unstated facts at their careful ends
    bool danger = false;  //!< exceeding the limit is a danger
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

/// Description of how a margin improved; empty if it did not, or by no more headroom than `slack`.
/// The likely severity is compared only on request, since one stated fact may improve it.
[[nodiscard]] std::string kinder(const YardVerdict& before, const YardVerdict& after, bool likely,
                                 double slack = 0.0);

/// The same margin with a planted sign error, severity and headroom inverted: the comparison must
/// detect it.
[[nodiscard]] YardVerdict turned_over(const YardVerdict& verdict);
