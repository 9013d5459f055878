#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Choices side by side.
namespace heatmatch::answer_sentences {

inline constexpr auto kept_lines = std::to_array<Template>({
    {"kept.title", "kept choices side by side"},
    {"kept.nothing", "No choice is kept yet. Choose, then press “keep this choice”."},
    {"kept.installation", "installation"},
    {"kept.place", "{place}"},
    {"kept.ohms", "resistance, ohm"},
    {"kept.season", "heat over the season, kWh"},
    {"kept.day", "heat per day, kWh"},
    {"kept.share", "utilization, %"},
    {"kept.element_power", "largest power of one element"},
    {"kept.sheath", "sheath, judged, {degrees}"},
    {"kept.headroom", "smallest headroom"},
    {"kept.worst", "worst margin"},
    {"kept.not_assessed", "not assessed"},
    {"kept.to_buy", "to buy"},
    {"kept.tilt", "tilt"},
    {"kept.sun", "sun, relative to the installation's"},
    {"kept.wire", "wire"},
    {"kept.length", "its length"},
    {"kept.conductivity", "conductivity of the fill"},
    {"kept.record_low", "record low"},
});

}  // namespace heatmatch::answer_sentences
