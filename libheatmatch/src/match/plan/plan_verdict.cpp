#include <algorithm>
#include <array>
#include <string_view>

#include "heatmatch/match/margins/margin.hpp"
#include "heatmatch/match/plan/plan_judge.hpp"
#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

namespace {

/// They rise with the power of every bank in the store, and depend on nothing else but the banks.
constexpr auto of_banks_alone = std::to_array<std::string_view>(
    {"sheath temperature", "coil temperature", "wall and lid", "floor"});
/// They depend on the array, its wire and its devices, but not on the elements.
constexpr auto of_arrays_alone = std::to_array<std::string_view>(
    {"cold voltage", "reverse current", "dc breaking", "disconnect"});

/// Whether they can be made depends on the array, its wire and its devices alone.
constexpr auto assessed_by_array = std::to_array<std::string_view>(
    {"cold voltage", "reverse current", "dc breaking", "run current", "wire"});

template <class Names>
bool is_among(const Names& names, std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

void PlanVerdict::add(const Margin& margin) {
    worst_danger = worst_danger || margin.worst_severity == Severity::danger;
    if (margin.severity == Severity::not_assessed) {
        if (is_among(assessed_by_array, margin.name)) array_assessed = false;
        if (!assessed || !decides_recommendation(margin.name)) return;
        assessed = false;
        if (danger) return;
        reason = margin.name;
        subject = margin.subject;
        if (!margin.missing.empty()) missing = margin.missing.front();
        return;
    }
    const bool fails = margin.severity == Severity::danger;
    if (margin.consequence != Severity::danger && !fails) return;
    // A danger without a number counts as one beyond its limit.
    const double found =
        fails ? std::min(0.0, margin.headroom.value_or(-1.0)) : margin.headroom.value_or(1.0);
    const bool first = fails && !danger;
    danger = danger || fails;
    if (found < headroom || first) {
        headroom = std::min(headroom, found);
        if (fails || assessed) {
            reason = margin.name;
            subject = margin.subject;
        }
    }
    if (is_among(of_banks_alone, margin.name)) heat_headroom = std::min(heat_headroom, found);
    if (is_among(of_arrays_alone, margin.name)) array_headroom = std::min(array_headroom, found);
}

}  // namespace heatmatch
