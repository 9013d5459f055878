#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Runs of wire: checked, and listed by zone.
namespace heatmatch::answer_sentences {

inline constexpr auto wire_lines_table = std::to_array<Template>({
    {"wires.title", "wires of {circuit}"},
    {"wires.run", "run"},
    {"wires.wire", "wire"},
    {"wires.gauge", "gauge"},
    {"wires.code", "code, {amperes}"},
    {"wires.hot", "hot, {degrees}"},
    {"wires.limited_by", "limited by"},
    {"wires.runaway", "runaway"},
    {"wires.legend",
     "A: amperes it carries at most; code: amperes that the code leaves it as it is laid; hot: the "
     "conductor at its worst in {degrees}; limit: of what "
     "gives way first, insulation, plating or joint. Below, each run with its severity and the "
     "reason that decides; none: within its limits; ?: not known, it may melt."},
    {"wires.reason", "{severity}: {run}: {says}"},
    {"wires.would_do", "would do: {wire}, {gauge}"},
    {"wires.at_terminal", "at the terminal"},
    {"wires.further_on", "only further on"},
    {"wires.reach", "insulation that would do {where}: {insulations}{more}"},
    {"wires.more", " and {count} more"},
    {"wires.insulation", "{insulation} ({limit})"},
    {"wires.insulation_from", "{insulation} ({limit}, from {from})"},

    {"wiring.zone", "zone"},
    {"wiring.carries", "carries"},
    {"wiring.length", "length, one way"},
    {"wiring.insulation", "insulation and its limit"},
    {"wiring.at_worst", "at its worst"},
    {"wiring.limit_by", "limit, by"},
    {"wiring.joints", "joints"},
    {"wiring.on_it", "on it"},
    {"wiring.would_do_head", "would do"},
    {"wiring.sun", "{zone} sun and weather"},
    {"wiring.shade", "{zone} out of the sun"},
    {"wiring.hot_end", "{zone} hot end"},
    {"wiring.run", "{run}"},
    {"wiring.wire", "{wire}, {size} ({other}) {conductor}"},
    {"wiring.not_known", "not known"},
    {"wiring.unknown_degrees", "? {degrees}"},
    {"wiring.runaway", "runaway: no steady temperature"},
    {"wiring.may_melt", "not known: it may melt"},
    {"wiring.hot", "{degrees}, {severity}"},
    {"wiring.limit", "{degrees}, {part}"},
    {"wiring.would_do", "{wire}, {gauge}"},
    {"wiring.device", "{device} ({duty})"},
    {"wiring.devices", "{devices}"},
    {"wiring.reason", "{run}: {says}"},
    {"wiring.nowhere", "{device}: placed on no run"},
});

}  // namespace heatmatch::answer_sentences
