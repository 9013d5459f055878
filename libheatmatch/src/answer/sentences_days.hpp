#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Simulated days, and a stagnation.
namespace heatmatch::answer_sentences {

inline constexpr auto days_lines = std::to_array<Template>({
    {"energy.title", "{circuit}: {days} days"},
    {"energy.dark_days", "{days} days of the darkest month"},
    {"energy.head", "energy, {unit}"},
    {"energy.all_days", "all days"},
    {"energy.a_day", "a day"},
    {"energy.available", "available from the panels"},
    {"energy.in", "into the elements"},
    {"energy.wire", "lost in wire and joints"},
    {"energy.given_off", "given off by the store"},
    {"energy.to_space", "from the store to the space"},
    {"energy.to_space_of_all", "from store to space (all)"},
    {"energy.elsewhere", "lost outside the space"},
    {"energy.of_all", "{what} (all)"},
    {"energy.stored", "increase of stored heat"},
    {"energy.steam", "of that, lost as steam"},

    {"peaks.title", "highest temperatures"},
    {"peaks.in_days", "highest temperature of each part on those days"},
    {"peaks.stagnation", "stagnation"},
    {"peaks.welded_shut", "If the circuit were welded closed:"},
    {"peaks.more",
     "{count} more parts are no nearer to a limit. --full lists them, the energy, the months, "
     "assumptions and cautions."},
    {"peaks.full", "--full lists the energy, the months, assumptions and cautions."},
    {"peaks.part", "part"},
    {"peaks.most", "most, {unit}"},
    {"peaks.when", "when"},
    {"peaks.moment", "day {day}, {clock}"},

    {"months.title", "months"},
    {"months.nights", "the nights"},
    {"months.days", "days"},
    {"months.most", "most"},
    {"months.in", "in"},
    {"months.space", "space"},
    {"months.dark", "dark {unit}"},
    {"months.warm", "warm {unit}"},
    {"months.without", "without"},
    {"months.warmer", "+ {unit}"},
    {"months.wanted", "need {unit}"},
    {"months.lowest", "low {unit}"},
    {"months.all", "all"},
    {"months.legend",
     "most, in, space: {unit} a day available from the panels, into the elements, and from the "
     "store to the space. dark h: hours without sun on the panels. warm h: dark hours at or above "
     "the target; without: the same without the store. +: temperature rise of the space from the "
     "store; need: rise needed to reach the target. Both are means over the dark hours. low: "
     "lowest "
     "temperature of the space in the dark."},
});

}  // namespace heatmatch::answer_sentences
