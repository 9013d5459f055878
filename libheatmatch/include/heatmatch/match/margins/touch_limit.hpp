#pragma once

#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// Highest voltage of live metal that can be touched [V]: 60 V dry, 30 V in every other case. A
/// place that is not stated to be dry counts as wet. @cite iec-60364-4-41
[[nodiscard]] inline double touch_limit_v(const Site& site) {
    constexpr double dry_v = 60.0;
    constexpr double wet_v = 30.0;
    return site.counts_as_wet() ? wet_v : dry_v;
}

}  // namespace heatmatch
