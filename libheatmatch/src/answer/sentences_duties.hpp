#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Counts of checks, unchecked facts, duties of codes.
namespace heatmatch::answer_sentences {

inline constexpr auto duty_lines = std::to_array<Template>({
    {"counts.all",
     "Checks made {made}, not made {not_made}: dangers {dangers}, warnings {warnings}{named}, "
     "cautions {cautions}, no finding {none}."},
    {"counts.named", " ({margins})"},
    {"counts.names", "{names} ({subject})"},
    {"counts.not_made", "State {fields} to check {checks:; }."},
    {"counts.no_field", "Not checked, and no field can supply what is missing: {checks:; }."},
    {"counts.judged", "State {fields}. Judged without that: {checks:; }."},
    {"counts.duties", "Code requirements not stated: {duties}."},
    {"counts.never",
     "Never checked here: permits, mating of connectors of different makes, mounting and "
     "workmanship."},

    {"duties.title", "code requirements here"},
    {"duties.name", "requirement"},
    {"duties.code", "code"},
    {"duties.begins", "begins"},
    {"duties.due", "applies"},
    {"duties.here", "here"},
    {"duties.which", "device, or what to state"},
    {"duties.ground_fault", "ground-fault protection"},
    {"duties.any", "any"},
    {"duties.above", "> {volts}"},
    {"duties.from", "{volts}"},
    {"duties.either", "> {volts}, {amperes}"},
    {"duties.counts",
     "Code requirements here: {due} apply, {perhaps} may apply. Not met {not_met}, not stated "
     "{nobody}, stated {stated}, with a device {devices}."},
    {"duties.line", "{duty} ({code}, {begins}): {due}{met}{devices}{state}."},
    {"duties.line_any", "at any voltage"},
    {"duties.line_from", "from {volts}"},
    {"duties.line_either", "> {volts} or {amperes}"},
    {"duties.line_perhaps", "may apply, "},
    {"duties.line_devices", ", {devices}"},
    {"duties.line_state", "; state {fields}"},
    {"duties.none_due", "{count} more do not apply here."},
    {"duties.scope",
     "Scope: {panels}; {earthing}; {wires}; {cold} at the record low, {amperes}; {code}."},
    {"duties.on_ground", "panels on the ground"},
    {"duties.on_building", "panels on a building"},
    {"duties.on_untold", "mounting of the panels not stated"},
    {"duties.grounded", "one pole grounded"},
    {"duties.floating", "floating"},
    {"duties.earthing_untold", "floating or grounded not stated"},
    {"duties.inside", "inside a building: {runs}"},
    {"duties.outside", "no wire inside a building"},
    {"duties.inside_untold", "not stated whether these lie inside a building: {runs}"},
    {"duties.nec", "National Electrical Code"},
    {"duties.iec", "IEC"},
    {"duties.both", "code not stated, so both"},
    {"duties.steps", "Voltage steps of the code, with {cold} at the record low: {steps}."},
    {"duties.step_past", "above {step} ({what})"},
    {"duties.step_below", "not above {step} ({what})"},
    {"duties.legend",
     "These requirements change no rank and no severity. Each counts as applying until it is known "
     "not to. Local codes and licensed practice decide."},
});

}  // namespace heatmatch::answer_sentences
