#include "heatmatch/answer/peaks_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

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
