#pragma once

#include <span>
#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"

namespace heatmatch {

/// The runs of a circuit, one row each: wire, gauge, current, temperature and governing limit.
[[nodiscard]] Table wires_table(const Circuit& circuit, std::span<const WireCheck> checks);

/// One run in words: severity and reason, then a suitable wire.
struct WireLines {
    Sentence reason{};
    Sentences remedies{};
};
/// `circuit` null: without the price of a suitable wire.
[[nodiscard]] std::vector<WireLines> wire_lines(std::span<const WireCheck> checks,
                                                const Circuit* circuit = nullptr);

/// Temperature of a run in whole degrees; unknown where the heat conducted along the element is.
[[nodiscard]] bool hot_unknown(const WireCheck& check);

}  // namespace heatmatch
