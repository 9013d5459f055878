#pragma once

#include "answer/sentences_bill.hpp"
#include "answer/sentences_candidate.hpp"
#include "answer/sentences_cells.hpp"
#include "answer/sentences_compared.hpp"
#include "answer/sentences_days.hpp"
#include "answer/sentences_drawing.hpp"
#include "answer/sentences_duties.hpp"
#include "answer/sentences_first.hpp"
#include "answer/sentences_hold.hpp"
#include "answer/sentences_kept.hpp"
#include "answer/sentences_meter.hpp"
#include "answer/sentences_ranking.hpp"
#include "answer/sentences_wires.hpp"

#include <array>
#include <cstddef>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room; the other files of that name contain the lines.
namespace heatmatch::answer_sentences {

template <std::size_t... N>
[[nodiscard]] consteval auto joined(const std::array<Template, N>&... tables) {
    std::array<Template, (N + ...)> all{};
    std::size_t next = 0;
    const auto take = [&](const auto& lines) {
        for (const Template& line : lines) all[next++] = line;
    };
    (take(tables), ...);
    return all;
}

inline constexpr auto table = joined(bill_table_lines, candidate_lines, cell_lines, compared_lines,
                                     days_lines, drawing_lines, duty_lines, first_lines, hold_lines,
                                     kept_lines, meter_lines, ranking_lines, wire_lines_table);

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::answer_sentences
