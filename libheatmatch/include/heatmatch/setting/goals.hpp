#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// Goals of the user.
struct Goals {
    std::vector<int> months{};       //!< of the heating season, 1 to 12
    std::optional<double> budget{};  //!< for parts to be bought
    std::string currency{};          //!< of the budget, ISO 4217

    friend bool operator==(const Goals&, const Goals&) = default;
};
[[nodiscard]] std::span<const Field> goals_fields();

}  // namespace heatmatch
