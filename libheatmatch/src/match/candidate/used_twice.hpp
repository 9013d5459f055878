#pragma once

#include <vector>

#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// Checks that several circuits together use no more panels of a group than are owned, and no more
/// elements of a kind than the installation lists. Throws InvalidInput.
void check_used_twice(const Installation& installation,
                      const std::vector<ExistingCircuit>& circuits);

}  // namespace heatmatch
