#include "heatmatch/answer/spared_wire.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace heatmatch {

using answer_sentences::say;

namespace {

/// Checks that reject a pairing for what it does to a wire.
constexpr auto checks_of_wires = std::to_array<std::string_view>(
    {"run current", "insulation", "hot tail insulation", "hot tail joint"});

bool of_wire(std::string_view name) {
    return std::find(checks_of_wires.begin(), checks_of_wires.end(), name) != checks_of_wires.end();
}

const Margin* danger_to_wire(const Candidate& candidate) {
    for (const Margin& margin : candidate.margins()) {
        if (margin.severity == Severity::danger && of_wire(margin.name)) return &margin;
    }
    return nullptr;
}

}  // namespace

Sentences spared_wires(const Ranking& ranking) {
    std::size_t count = 0;
    for (const auto& [reason, pairings] : ranking.reasons) count += of_wire(reason) ? pairings : 0;
    if (count == 0) return {say<"wires.none_spared">()};
    Sentences told{say<"wires.spared">(with<"count">(number(static_cast<double>(count), 0)))};
    for (const Candidate& rejected : ranking.rejected) {
        const Margin* const margin = danger_to_wire(rejected);
        if (margin == nullptr) continue;
        told.push_back(say<"wires.first_spared">(with<"circuit">(rejected.circuit.title()),
                                                 with<"why">(margin->whole())));
        break;
    }
    return told;
}

}  // namespace heatmatch
