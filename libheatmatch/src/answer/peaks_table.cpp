#include "heatmatch/answer/peaks_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr double minutes_of_hour = 60.0;
constexpr double minutes_of_day = 1440.0;

/// Name of the margin without "temperature", which is in the heading.
Sentence part_cell(const Margin& margin) {
    constexpr std::string_view ending = " temperature";
    const std::string shown = shown_margin_name(margin.name);
    std::string_view name = shown;
    if (name.ends_with(ending)) name.remove_suffix(ending.size());
    return name_cell(name);
}

/// Hours after the start as day and clock time, by mean solar time. Rounded to whole minutes, so
/// that the day and the clock agree at midnight.
Sentence moment_cell(const DayRun& run, double hours) {
    const double minutes = std::nearbyint(minutes_of_hour * (run.first_hour + hours));
    return say<"peaks.moment">(
        with<"day">(number(std::floor(minutes / minutes_of_day) + 1.0, 0)),
        with<"clock">(
            Amount{.value = minutes / minutes_of_hour, .unit = unit::hour, .shown = Shown::clock}));
}

}  // namespace

Table peaks_table(const DayRun& run, std::span<const PartPeak> peaks) {
    Table table{.title = say<"peaks.title">(),
                .columns = {{.head = say<"peaks.part">()},
                            {.head = say<"peaks.most">(
                                 with<"unit">(Amount{.unit = unit::celsius, .shown = Shown::unit})),
                             .number = true},
                            {.head = say<"head.limit">(), .number = true},
                            {.head = say<"head.headroom">(), .number = true},
                            {.head = say<"head.severity">()},
                            {.head = say<"peaks.when">()}}};
    for (const PartPeak& peak : peaks) {
        const Margin& margin = peak.margin;
        table.rows.push_back({part_cell(margin), degrees_cell(margin.value),
                              degrees_cell(margin.limit), headroom_cell(margin),
                              severity_cell(margin.severity), moment_cell(run, peak.hours)});
    }
    return table;
}

std::vector<PartPeak> worst_peaks(std::span<const PartPeak> peaks, std::size_t most) {
    std::vector<PartPeak> worst(peaks.begin(), peaks.end());
    const auto rank = [](const Margin& margin) {
        switch (margin.severity) {
            case Severity::danger:
                return 0;
            case Severity::warning:
                return 1;
            case Severity::caution:
                return 2;
            case Severity::not_assessed:
                return 3;
            case Severity::none:
                break;
        }
        return 4;
    };
    std::stable_sort(worst.begin(), worst.end(), [&rank](const PartPeak& a, const PartPeak& b) {
        const int of_a = rank(a.margin);
        const int of_b = rank(b.margin);
        if (of_a != of_b) return of_a < of_b;
        return a.margin.headroom.value_or(1.0) < b.margin.headroom.value_or(1.0);
    });
    if (worst.size() > most)
        worst.erase(worst.begin() + static_cast<std::ptrdiff_t>(most), worst.end());
    return worst;
}

Sentence shortened_days(std::size_t left_out) {
    if (left_out == 0) return say<"peaks.full">();
    return say<"peaks.more">(with<"count">(number(static_cast<double>(left_out), 0)));
}

Sentence peaks_in_days_title() {
    return say<"peaks.in_days">();
}

Sentence stagnation_title() {
    return say<"peaks.stagnation">();
}

Sentence welded_shut_title() {
    return say<"peaks.welded_shut">();
}

}  // namespace heatmatch
