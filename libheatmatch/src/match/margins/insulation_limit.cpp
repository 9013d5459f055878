#include "insulation_limit.hpp"

#include <algorithm>

namespace heatmatch {

namespace {

/// Insulation above this temperature dries; from memory.
constexpr double driest_wet_c = 90.0;

}  // namespace

InsulationLimit insulation_limit(const Circuit& circuit, const RunParts& run, const Site& site) {
    const Insulation& insulation = *run.insulation;
    const SurroundingsKind kind = run.run.surroundings.kind;
    const bool buried = kind == SurroundingsKind::buried;
    InsulationLimit result{.limit_c = insulation.limit_c};
    const bool wet = site.counts_as_wet() || buried;
    if (!wet || kind == SurroundingsKind::bed) return result;
    if (!insulation.limit_wet_c) {
        result.wet_unknown = true;
        return result;
    }
    const double wet_c = std::min(*insulation.limit_wet_c, insulation.limit_c);
    const bool tail = run.run.carries == Carried::bank || run.run.carries == Carried::branch;
    const bool dries = tail && !buried && circuit.run_at_element() == &run && wet_c >= driest_wet_c;
    if (dries) {
        result.wet_c = wet_c;
        return result;
    }
    result.soaked = wet_c < insulation.limit_c;
    result.limit_c = wet_c;
    return result;
}

}  // namespace heatmatch
