#pragma once

#include <span>
#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"

namespace heatmatch {

/// The runs of a circuit, a row each: wire, gauge, amperes, how hot, and what limits it.
[[nodiscard]] Table wires_table(const Circuit& circuit, std::span<const WireCheck> checks);

/// One run in words: its severity and reason, then what would do instead.
struct WireLines {
    Sentence reason{};
    Sentences remedies{};
};
[[nodiscard]] std::vector<WireLines> wire_lines(std::span<const WireCheck> checks);

/// How hot a run gets, in whole degrees; unknown where the heat that comes down the element is.
[[nodiscard]] bool hot_unknown(const WireCheck& check);

}  // namespace heatmatch
