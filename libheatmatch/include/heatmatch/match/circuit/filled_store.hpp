#pragma once

#include <memory>
#include <vector>

#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// A store with its fill and the air around it: all inputs of its heat except the elements.
struct FilledStore {
    Store store{};
    Medium medium{};
    double charge_hours = 6.0;    //!< hours of bright sun per day [h]
    double air_c = 30.0;          //!< around it on a bright day of the season [°C]
    double hottest_air_c = 40.0;  //!< the same in high summer [°C]
    UnstatedPlaces unstated{};    //!< positions for which legs count as near each face
    std::vector<Assumption> assumed{};

    friend bool operator==(const FilledStore&, const FilledStore&) = default;
};

/// Consecutive bright days before margins are assessed, and before a stagnation; common practice,
/// no source.
inline constexpr double bright_days = 3.0;
inline constexpr double stagnation_days = 14.0;

/// The store of an installation; null without one. If not stated, the air is 30 °C (from memory),
/// and in high summer the warmest month's mean daily high + 10 K within a space, or 40 °C.
[[nodiscard]] std::shared_ptr<const FilledStore> fill_store(const Parts& parts,
                                                            const Installation& installation);

}  // namespace heatmatch
