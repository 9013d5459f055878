#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Labels of the drawing of a circuit.
namespace heatmatch::answer_sentences {

inline constexpr auto drawing_lines = std::to_array<Template>({
    {"drawing.array", "up to {volts} at the record low, {amps} in short circuit"},
    {"drawing.bank", "{elements}: {ohm}"},
    {"drawing.working", "{volts}, {amps} at {sun}"},
    {"drawing.size", "{size} ({other})"},
    {"drawing.length", "{length} one way"},
    {"drawing.no_wire", "no suitable wire"},
    {"drawing.senses", "senses the {place}{set}"},
    {"drawing.set", ", opens at {degrees}"},
    {"drawing.elsewhere", "{duty}; run not stated"},

    {"drawing.cylinder", "{fill}: {diameter} across, {height} high"},
    {"drawing.box", "{fill}: {width} by {depth}, {height} high"},
    {"drawing.no_size", "{fill}: size not stated"},
    {"drawing.unknown", "?"},
    {"drawing.lie", "elements lying{spacing}{height}{axis}"},
    {"drawing.upright", "elements upright{spacing}{height}{axis}"},
    {"drawing.placed", "elements{spacing}{height}{axis}"},
    {"drawing.not_placed", "place of the elements not stated"},
    {"drawing.spacing", ", {distance} apart"},
    {"drawing.height", ", {distance} above the floor"},
    {"drawing.middle", ", in the middle"},
    {"drawing.axis", ", {distance} from the middle"},
    {"drawing.vessel", "{vessel} vessel{base}{clear}"},
    {"drawing.no_vessel", "vessel not stated{base}{clear}"},
    {"drawing.base", ", on {base}"},
    {"drawing.clear", ", {distance} to anything that burns"},
});

}  // namespace heatmatch::answer_sentences
