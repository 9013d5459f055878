#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Season, power and heat of one candidate.
namespace heatmatch::answer_sentences {

inline constexpr auto candidate_lines = std::to_array<Template>({
    {"head.month", "month"},
    {"season.title", "heat per day (* in the season)"},
    {"season.months_title", "heat per day in each month (* in the season)"},
    {"season.month", "{month}*"},
    {"season.delivered", "kWh/day"},
    {"season.possible", "at most"},
    {"season.totals",
     "Heat over {days} days of the season (*): {kwh} ({low} to {high} by tolerance, age or "
     "reading{cloud}). Utilization: {share} %."},
    {"season.cloud", ", cloud within the step"},
    {"season.bank", "This bank has {ohm}{beside}."},
    {"season.too_many", ": too high"},
    {"season.too_few", ": too low"},
    {"season.near_short",
     "In about {share} % of the sunlit hours the panels operate near short circuit, "
     "below half of their open-circuit voltage. In those hours the resistance is too low for the "
     "irradiance."},
    {"delivered.title", "{circuit}: {mean} over the conditions"},
    {"delivered.plain_title", "power at three irradiances"},
    {"delivered.sun", "sun {unit}"},
    {"delivered.cells", "cells"},
    {"delivered.of_most", "of max"},
    {"delivered.wire", "wire W"},
    {"delivered.circuit",
     "{circuit}: {ohm}; the label's Vmp/Imp is {label_ohm}. Open-circuit voltage at "
     "the record low: {cold}."},
    {"heat.not_computed", "temperatures in the store: not computed"},
    {"heat.title",
     "temperatures in the store, {degrees}: {watts} per element in cold, bright weather, {load}, "
     "{hours} a day"},
    {"heat.title_unlike",
     "temperatures in the store, {degrees}: up to {watts} an element in cold, bright weather, up "
     "to {load}, {hours} a day"},
    {"heat.of_element", "{what}, {subject}"},
    {"heat.coil", "coil"},
    {"heat.settled", "sheath in settled sand"},
    {"heat.stagnation", "sheath in stagnation"},
    {"heat.terminal", "terminal"},
    {"heat.end_seal", "end seal"},
    {"heat.hot_tail", "element lead insulation"},
    {"heat.bed_mean", "bed, mean"},
    {"heat.liquid_mean", "liquid, mean"},
    {"heat.wall", "wall, hottest spot"},
    {"heat.lid", "lid"},
    {"season.price", "Purchase cost: {money} per kWh of one season's heat."},
});

}  // namespace heatmatch::answer_sentences
