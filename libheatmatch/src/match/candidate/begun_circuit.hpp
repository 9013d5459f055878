#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// A circuit before the heat of its store is known.
struct BegunCircuit {
    Installation judged{};  //!< with this circuit alone
    Circuit circuit{};
    std::optional<SeasonWeather> season{};
    std::shared_ptr<const Weather> weather{};    //!< of the site's plane; null without any
    std::optional<double> needed_kwh_per_day{};  //!< of the space
    Sentences remarks{};
};

/// Sets the heat of every circuit in the store that they share.
void share_store(std::vector<BegunCircuit>& all, const Parts& parts);

/// Limits that open a circuit too late do not count for the other circuits either.
void count_limits(std::vector<BegunCircuit>& all);

}  // namespace heatmatch
