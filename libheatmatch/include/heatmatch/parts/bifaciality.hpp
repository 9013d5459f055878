#pragma once

#include <optional>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/panel.hpp"

namespace heatmatch {

/// Rear irradiance on labels beside 1000 W/m2 on the front: nameplate (BNPI) and stress tests (BSI)
/// [W/m2]. @cite iec-61215-1
inline constexpr double nameplate_rear_w_m2 = 135.0;
inline constexpr double stress_rear_w_m2 = 300.0;

/// Bifaciality in the careful case where it is not stated and the back may be clear; the maximum.
inline constexpr double careful_bifaciality = 1.0;

/// Additional current share for a back mounted on a wall or a roof: the value of permit reviewers
/// for flush mounting. @cite solarapp-bifacial
inline constexpr double most_behind_blocked = 0.05;

/// Bifaciality from the label's short-circuit currents with rear light; empty without them.
[[nodiscard]] std::optional<double> labelled_bifaciality(const Panel& panel);

/// Whether a panel of unstated bifaciality has an opaque back: thin film and multicrystalline cells
/// are on metal or a white sheet, as are all cells sold before bifacial ones, except
/// heterojunction. `age_years` if known. From memory.
[[nodiscard]] bool has_opaque_back(const Panel& panel, std::optional<double> age_years);

/// Short-circuit current with the most rear light over that of the front alone: the label's at BSI,
/// or at BNPI scaled to it, else 1 + 0.3 times the bifaciality; at most 1.05 where a wall or a roof
/// blocks the back. 1 where the bifaciality is not known. @cite iec-61215-1
[[nodiscard]] double rear_current_factor(const Panel& panel, bool blocked);

/// Sets the bifaciality from the label's currents, or to 0 for an opaque back, and lists it as
/// assumed. Where the back may be clear it is not set, and 0 is listed.
void fill_bifaciality(Panel& panel, std::optional<double> age_years,
                      std::vector<Assumption>& assumed);

}  // namespace heatmatch
