#include "heatmatch/match/rank/alternative.hpp"

#include <algorithm>
#include <cmath>

namespace heatmatch {

namespace {

constexpr auto deciding = std::to_array<std::string_view>(
    {"sheath temperature", "survivor sheath", "stagnation", "terminal temperature",
     "hot tail insulation", "wire", "insulation", "run current", "cold voltage", "dc breaking",
     "floor", "pressure", "vessel material", "reverse current", "element power", "sheath voltage"});

bool is_undecided(const Margin& margin) {
    return margin.severity == Severity::not_assessed && decides_recommendation(margin.name);
}

}  // namespace

std::span<const std::string_view> deciding_margins() {
    return deciding;
}

bool decides_recommendation(std::string_view margin) {
    return std::find(deciding.begin(), deciding.end(), margin) != deciding.end();
}

std::vector<const Margin*> undecided_margins(const Candidate& candidate) {
    std::vector<const Margin*> found;
    for (const Margin& margin : candidate.margins()) {
        if (is_undecided(margin)) found.push_back(&margin);
    }
    return found;
}

bool all_decided(std::span<const Margin> margins) {
    return std::none_of(margins.begin(), margins.end(), is_undecided);
}

int pieces_of(const Bill& bill) {
    double pieces = 0.0;
    for (const BillLine& line : bill.lines) {
        if (line.kind != PartKind::wire) pieces += line.quantity;
    }
    return static_cast<int>(std::lround(pieces));
}

}  // namespace heatmatch
