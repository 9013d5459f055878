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
    /// Price of one US dollar in that currency: prices in USD are converted by it.
    std::optional<double> per_usd{};
    /// Of a plan: circuits at most; not stated: three.
    std::optional<int> circuits_max{};
    std::optional<double> volts_max{};     //!< of an array at the record low, at most [V]
    std::optional<double> headroom_min{};  //!< of a plan's checks, 0 to 0.9
    std::optional<int> parts_max{};        //!< pieces on a plan's bill, wire not counted

    friend bool operator==(const Goals&, const Goals&) = default;
};
[[nodiscard]] std::span<const Field> goals_fields();

}  // namespace heatmatch
