#include "yard_verdict.hpp"

#include <algorithm>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/assess.hpp"

namespace {

constexpr double noise = 1e-3;  // of headroom: error of the iterations of the heat model

/// Clamped, because headroom above 1 is colder than at rest, and below -1 wires melt and tables
/// end: differences there mean nothing.
double clipped(double headroom) {
    return std::clamp(headroom, -1.0, 1.0);
}

std::string change_of(const char* what, double before, double after) {
    return std::string(what) + ' ' + std::to_string(before) + " became " + std::to_string(after);
}

}  // namespace

std::optional<YardVerdicts> judge_yard(const heatmatch::Installation& yard) {
    YardVerdicts found;
    try {
        for (const heatmatch::Margin& margin : heatmatch::assess({}, yard).margins()) {
            YardVerdict verdict{
                .likely = heatmatch::badness(margin.severity, margin.consequence),
                .worst = heatmatch::badness(margin.worst_severity, margin.consequence),
                .danger = margin.consequence == heatmatch::Severity::danger,
                .headroom = margin.careful_headroom,
                .unit = std::string(margin.unit.symbol),
                .sentence = margin.sentence(),
                .value = margin.value,
                .limit = margin.limit};
            found.insert_or_assign({margin.name, margin.subject}, std::move(verdict));
        }
    } catch (const heatmatch::Error&) {
        return std::nullopt;
    }
    return found;
}

std::string kinder(const YardVerdict& before, const YardVerdict& after, bool likely, double slack) {
    const bool known = before.headroom && after.headroom && before.unit == after.unit;
    if (slack > 0.0 && known && *after.headroom <= *before.headroom + slack) return "";
    if (after.worst < before.worst) return change_of("worst", before.worst, after.worst);
    if (likely && after.likely < before.likely) {
        return change_of("likely", before.likely, after.likely);
    }
    if (!known) return "";
    if (clipped(*after.headroom) > clipped(*before.headroom) + noise) {
        return change_of("headroom", *before.headroom, *after.headroom);
    }
    return "";
}

YardVerdict turned_over(const YardVerdict& verdict) {
    constexpr int danger = 3;
    YardVerdict turned = verdict;
    turned.likely = danger - verdict.likely;
    turned.worst = danger - verdict.worst;
    if (verdict.headroom) turned.headroom = -clipped(*verdict.headroom);
    return turned;
}
