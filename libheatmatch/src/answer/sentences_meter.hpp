#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Meter sheets and diagnoses.
namespace heatmatch::answer_sentences {

inline constexpr auto meter_lines = std::to_array<Template>({
    {"sheet.title", "meter sheet: {circuit}"},
    {"sheet.caption", "{circuit}: {legend}"},
    {"sheet.plain_title", "what meters should read"},
    {"sheet.sun", "sun"},
    {"sheet.panels", "panels"},
    {"sheet.warm", "warm"},
    {"sheet.cool", "cool"},
    {"sheet.cells", "cells"},
    {"sheet.open", "Voc"},
    {"sheet.short", "Isc"},
    {"sheet.array", "array {unit}"},
    {"sheet.bank", "bank {unit}"},
    {"sheet.legend",
     "sun in {sun}, cells in {degrees}, voltage, current, power; low to high for "
     "panels and resistance, without meter error. warm: panels after an hour in that sun. cool: "
     "panels just uncovered, before they warm"},

    {"checks.title", "what to measure and to look at"},
    {"checks.reading", "reading"},
    {"checks.how", "how"},
    {"checks.expect", "expect"},
    {"checks.if_less", "if less"},
    {"checks.if_more", "if more"},
    {"checks.line", "{letter}  {reading}: {expect}"},
    {"checks.less", "less: {means}"},
    {"checks.more", "more: {means}"},
    {"checks.not_known", "not known: {what}"},

    {"explanations.title", "explanations, the best first"},
    {"explanations.explanation", "explanation"},
    {"explanations.weight", "weight"},
    {"explanations.misfit", "misfit"},
    {"explanations.alike", "cannot be distinguished"},
    {"explanations.measure_next", "Measure next: {reading}. {how} {predictions}"},
    {"explanations.alone",
     "{volts} at {amperes}: {ohms}, {watts}. Name your installation file to compare them with "
     "your circuit."},
    {"explanations.evidence", "evidence for {name}:"},
    {"explanations.readings", "readings of {circuit}"},
});

}  // namespace heatmatch::answer_sentences
