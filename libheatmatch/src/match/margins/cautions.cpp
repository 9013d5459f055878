#include "heatmatch/match/margins/cautions.hpp"

#include <array>

namespace heatmatch {

std::span<const std::string_view> cautions() {
    static constexpr auto sentences = std::to_array<std::string_view>({
        "Direct current above 60 V (30 V where wet) can kill, and its arcs do not go out by "
        "themselves.",
        "Switches and thermostats rated for alternating current weld shut on direct current.",
        "Nothing may see more volts than its rating on the coldest morning.",
        "Bond the metal vessel, the sheath and the panel frames, and check for earth faults: a "
        "broken "
        "coil can arc through its sheath.",
        "Keep combustibles away; no cardboard or wood near the store.",
        "Use an independent over-temperature limit that does not reset by itself.",
        "Damp sand makes steam: dry it slowly and vented, never sealed.",
        "Silica dust harms lungs; hot metal and hot sand burn.",
        "No unattended first fires; fit a smoke alarm.",
        "An immersion element must never see its rated voltage in dry sand.",
        "Local codes and licensed practice decide. These are estimates; they approve nothing.",
    });
    return sentences;
}

}  // namespace heatmatch
