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
     "A: largest current in the wire; code: ampacity by the code as installed, in amperes. hot: "
     "highest conductor temperature in {degrees}. limit: the lowest of insulation, plating and "
     "joint. Below: the severity of each run and the reason that decides. no finding: no limit "
     "that was checked is exceeded. ?: not known; it may melt."},
    {"wires.reason", "{severity}: {run}: {says}"},
    {"wires.would_do", "suitable: {wire}, {gauge}{price}"},
    {"wires.price", ", about {money} for this run"},
    {"wires.spared",
     "This row was chosen so that its wires stay within their limits: {count} pairings are left "
     "out because one would not."},
    {"wires.first_spared", "The one with the most heat among them: {circuit}. {why}"},
    {"wires.none_spared", "No pairing of the ranking is left out because of a wire."},
    {"wires.at_terminal", "at the terminal"},
    {"wires.further_on", "only further from the terminal"},
    {"wires.reach", "insulation suitable {where}: {insulations}{more}"},
    {"wires.more", " and {count} more"},
    {"wires.insulation", "{insulation} ({limit})"},
    {"wires.insulation_from", "{insulation} ({limit}, from {from})"},

    {"wiring.zone", "zone"},
    {"wiring.carries", "carries"},
    {"wiring.length", "length, one way"},
    {"wiring.insulation", "insulation and its limit"},
    {"wiring.at_worst", "highest temperature"},
    {"wiring.limit_by", "limit, by"},
    {"wiring.joints", "joints"},
    {"wiring.on_it", "devices"},
    {"wiring.would_do_head", "suitable"},
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
    {"wiring.nowhere", "{device}: placed in no run"},
});

}  // namespace heatmatch::answer_sentences
