#pragma once

#include <optional>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/panel.hpp"

namespace heatmatch {

/// Light on the back that labels name beside 1000 W/m2 on the front: of the nameplate (BNPI) and of
/// the stress tests (BSI) [W/m2]. @cite iec-61215-1
inline constexpr double nameplate_rear_w_m2 = 135.0;
inline constexpr double stress_rear_w_m2 = 300.0;

/// Bifaciality in the careful case where it is unstated and the back may be clear; none is higher.
inline constexpr double careful_bifaciality = 1.0;

/// More amperes than on the front alone, a share, for a back that lies on a wall or a roof: what
/// reviewers of permits add for flush mounting. @cite solarapp-bifacial
inline constexpr double most_behind_blocked = 0.05;

/// Bifaciality from the label's short-circuit currents with rear light; nothing without them.
[[nodiscard]] std::optional<double> labelled_bifaciality(const Panel& panel);

/// Whether a panel of unstated bifaciality has an opaque back: thin film and multicrystalline
/// cells lie on metal or a white sheet, and so do those sold before bifacial cells were, but for
/// heterojunction. `age_years` where that is known. From memory.
[[nodiscard]] bool has_opaque_back(const Panel& panel, std::optional<double> age_years);

/// Short-circuit current with the most light behind over that of the front alone: the label's at
/// BSI, or at BNPI scaled to it, else 1 + 0.3 times the bifaciality; at most 1.05 where a wall or a
/// roof blocks the back. 1 where the bifaciality is not known. @cite iec-61215-1
[[nodiscard]] double rear_current_factor(const Panel& panel, bool blocked);

/// Fills the bifaciality from the label's currents, or 0 for an opaque back, and lists it; where
/// the back may be clear nothing is filled, and 0 is listed.
void fill_bifaciality(Panel& panel, std::optional<double> age_years,
                      std::vector<Assumption>& assumed);

}  // namespace heatmatch
