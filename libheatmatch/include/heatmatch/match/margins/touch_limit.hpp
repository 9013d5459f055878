#pragma once

#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// What live metal may have that somebody touches [V]: 60 V dry, 30 V in every other case; a place
/// that nobody tells to be dry counts as wet. @cite iec-60364-4-41
[[nodiscard]] inline double touch_limit_v(const Site& site) {
    constexpr double dry_v = 60.0;
    constexpr double wet_v = 30.0;
    return site.counts_as_wet() ? wet_v : dry_v;
}

}  // namespace heatmatch
