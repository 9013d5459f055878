#include "heatmatch/answer/verdict.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/answer/season_table.hpp"
#include "heatmatch/base/constants.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Amount whole_watts(double watts) {
    return {.value = watts, .unit = unit::watt, .decimals = 0};
}

/// Steady power equal to that heat per day.
double steady_w(double kwh_per_day) {
    return 1000.0 * kwh_per_day / hours_of_day;
}

Amount kwh(double value) {
    return {.value = value, .unit = unit::kilowatt_hour, .decimals = 2};
}

bool in_danger(const Candidate& candidate) {
    return std::any_of(candidate.margins().begin(), candidate.margins().end(),
                       [](const Margin& m) { return m.severity == Severity::danger; });
}

/// The counts, preceded by the dangers.
Sentence counts_with_dangers(const Candidate& candidate) {
    if (!in_danger(candidate)) return counts_sentence(candidate);
    std::set<std::string> dangers;
    for (const Margin& margin : candidate.margins()) {
        if (margin.severity == Severity::danger) dangers.insert(margin.name);
    }
    Sentences names;
    for (const std::string& name : dangers) names.push_back(margin_cell(name));
    return say<"verdict.danger">(with<"margins">(std::move(names)),
                                 with<"counts">(counts_sentence(candidate)));
}

}  // namespace

Sentence heat_sentence(const Candidate& candidate) {
    if (!candidate.season) {
        return say<"verdict.power">(with<"mean">(whole_watts(candidate.mean_power_w())));
    }
    const Season& season = *candidate.season;
    const double mean = season.mean_kwh_per_day();
    Sentence darkest;
    if (const auto month = darkest_month(season)) {
        const double least = season.kwh_per_day.at(static_cast<std::size_t>(*month - 1));
        darkest =
            say<"verdict.darkest">(with<"least">(kwh(least)), with<"month">(month_word(*month)),
                                   with<"least_power">(whole_watts(steady_w(least))));
    }
    return say<"verdict.season">(with<"mean">(kwh(mean)),
                                 with<"mean_power">(whole_watts(steady_w(mean))),
                                 with<"darkest">(std::move(darkest)),
                                 with<"share">(percent_number(season.harvest_fraction())));
}

Sentence space_sentence(const Candidate& candidate) {
    if (!candidate.space || !candidate.space->known()) return say<"verdict.no_space">();
    const SpaceBalance& space = *candidate.space;
    const double heat_w = candidate.season ? steady_w(candidate.season->mean_kwh_per_day())
                                           : candidate.mean_power_w();
    const double warmer_k = 10.0;
    return say<"verdict.space">(with<"loss">(whole_watts(warmer_k * space.loss_w_k())),
                                with<"warmer">(warmer_k, unit::kelvin, 2),
                                with<"when">(candidate.season ? say<"verdict.over_the_season">()
                                                              : say<"verdict.while_it_gives">()),
                                with<"lift">(space.lift_k(heat_w), unit::kelvin, 2));
}

std::vector<const Margin*> possible_dangers(const Candidate& candidate) {
    std::vector<const Margin*> found;
    for (const Margin& margin : candidate.margins()) {
        if (margin.severity == Severity::danger) continue;
        // A limit in the other direction has its worse end at the low value, which is `value`.
        const bool upper = margin.value && margin.limit && margin.headroom &&
                           (*margin.value <= *margin.limit) == (*margin.headroom >= 0.0);
        const bool beyond = margin.consequence == Severity::danger && upper && margin.value_high &&
                            *margin.value_high > *margin.limit;
        if (beyond || margin.worst_severity == Severity::danger) found.push_back(&margin);
    }
    return found;
}

Sentence margin_sentence(const Candidate& candidate) {
    Sentence said = counts_with_dangers(candidate);
    if (const auto fact = candidate.deciding_fact()) {
        said = say<"verdict.decides">(with<"said">(std::move(said)), with<"field">(fact->field),
                                      with<"part">(fact->part));
    }
    Sentences names;
    for (const Margin* margin : possible_dangers(candidate)) {
        const Sentence name = margin_cell(margin->name);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    if (names.empty()) return said;
    return say<"verdict.may_be">(with<"said">(std::move(said)), with<"margins">(std::move(names)));
}

Sentence nearest_sentence(const Candidate& candidate) {
    const Margin* nearest = candidate.nearest_limit();
    Sentence unknown = candidate.heat_unknown() ? say<"verdict.heat_unknown">() : Sentence{};
    if (nearest == nullptr) return unknown;
    Sentence numbers;
    if (nearest->value && nearest->limit) {
        numbers = say<"verdict.its_limit">(with<"value">(*nearest->value, nearest->unit),
                                           with<"limit">(*nearest->limit, nearest->unit));
    }
    Sentence said = say<"verdict.nearest">(
        with<"margin">(shown_margin_name(nearest->name)), with<"subject">(nearest->subject),
        with<"numbers">(std::move(numbers)), with<"headroom">(number(*nearest->headroom, 2)));
    return unknown.empty() ? said : sentence_of(Sentences{std::move(said), unknown});
}

Sentence lived_week_sentence(const Season& season) {
    const auto month = darkest_month(season);
    return month ? say<"verdict.lived_week">(with<"month">(month_word(*month))) : Sentence{};
}

Sentences verdict(const Candidate& candidate) {
    Sentences sentences{heat_sentence(candidate), margin_sentence(candidate)};
    if (in_danger(candidate)) std::swap(sentences.front(), sentences.back());
    return sentences;
}

}  // namespace heatmatch
