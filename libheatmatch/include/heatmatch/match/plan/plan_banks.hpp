#pragma once

#include <span>
#include <string>
#include <vector>

#include "heatmatch/setting/layout.hpp"

namespace heatmatch {

/// Equal elements that are owned.
struct OwnedElements {
    std::string element{};  //!< id
    int count = 0;
};

/// Most elements of a bank of unlike elements in a plan.
inline constexpr int most_planned_in_tree = 4;

/// Every bank of at least two kinds of them in series and parallel, with up to `most` elements:
/// each network once, whatever the order of its parts.
[[nodiscard]] std::vector<Layout> unlike_banks(std::span<const OwnedElements> owned,
                                               int most = most_planned_in_tree);

}  // namespace heatmatch
