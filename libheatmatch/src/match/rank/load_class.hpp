#pragma once

#include <cstddef>
#include <vector>

#include "heatmatch/match/circuit/bank.hpp"

namespace heatmatch {

/// The load that a bank is: banks of one element and one ratio of series to parallel have the same
/// resistance.
struct LoadClass {
    std::size_t number = 0;
    bool shared = false;  //!< several banks are this load
};
/// Of each bank.
[[nodiscard]] std::vector<LoadClass> load_classes(const std::vector<Bank>& banks);

}  // namespace heatmatch
