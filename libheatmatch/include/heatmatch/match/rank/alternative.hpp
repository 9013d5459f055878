#pragma once

#include <array>
#include <span>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What an alternative to the recommended circuit is first in, among the circuits that could be
/// recommended: heat; price; the recommendation among those below the touch voltage; headroom; the
/// recommendation among those with nothing to buy. A cheap or cool one has at least half of the
/// largest heat.
enum class AlternativeKind { most_heat, least_money, below_touch_voltage, coolest, all_owned };
inline constexpr auto alternative_words = std::to_array<std::string_view>(
    {"most heat", "least money", "below touch voltage", "coolest", "all owned"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(AlternativeKind) {
    return alternative_words;
}

/// Another circuit that a ranking names beside the recommended one.
struct Alternative {
    AlternativeKind kind = AlternativeKind::most_heat;
    Candidate candidate{};
};

/// Whether a margin decides about a recommendation: one that could not be assessed prevents it.
/// These are the temperatures of sheath, terminal, element lead and wires, stagnation, ampacity,
/// voltage at the record low, reverse current, power of an element and voltage to its sheath,
/// breaking capacity, floor, pressure and vessel.
[[nodiscard]] bool decides_recommendation(std::string_view margin);
[[nodiscard]] std::span<const std::string_view> deciding_margins();
/// The deciding margins of a candidate that could not be assessed.
[[nodiscard]] std::vector<const Margin*> undecided_margins(const Candidate& candidate);
[[nodiscard]] bool all_decided(std::span<const Margin> margins);
/// Pieces on a bill; wire is not counted.
[[nodiscard]] int pieces_of(const Bill& bill);

}  // namespace heatmatch
