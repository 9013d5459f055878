#include "heatmatch/match/rank/rank.hpp"

#include "evaluation.hpp"
#include "recommend.hpp"
#include "screen.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <map>
#include <numeric>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/space_need.hpp"
#include "heatmatch/solar/own_weather.hpp"

namespace heatmatch {

namespace {

using rank_sentences::say;

/// Number of Pareto-optimal pairings kept at least, whatever the length of the list.
constexpr std::size_t least_front = 200;
/// Groups whose remarks are listed one by one.
constexpr std::size_t few_groups = 12;

void check_lists(const Installation& installation) {
    const auto refuse = [](const char* field, Sentence remedy) {
        throw InvalidInput(ErrorDetail{.part = "installation",
                                       .field = field,
                                       .value = "(none)",
                                       .allowed = "at least one entry",
                                       .remedy = std::move(remedy)});
    };
    if (installation.panels.empty()) {
        refuse("panels", say<"rank.list_panels">(with<"example">(
                             Name{R"({"group": "barn pair", "panel": "id", "count": 2})"})));
    }
    if (installation.elements.empty()) {
        refuse("elements",
               say<"rank.list_elements">(with<"example">(Name{R"({"any": {}, "count": 4})"})));
    }
}

void append(Sentences& to, const Sentences& more) {
    to.insert(to.end(), more.begin(), more.end());
}

Sentence order_remark(const ScreenContext& context) {
    if (context.season != nullptr) {
        const auto days = with<"days">(context.season->days, unit::none, 4);
        return context.season->split ? say<"rank.by_heat_of_hours">(days)
                                     : say<"rank.by_heat">(days);
    }
    Sentences conditions;
    for (const Condition& condition : context.options->conditions) {
        conditions.push_back(
            say<"rank.condition">(with<"sun">(condition.irradiance_w_m2, unit::watt_per_m2, 6),
                                  with<"cells">(condition.cell_temperature_c, unit::celsius, 6)));
    }
    return say<"rank.by_power">(with<"conditions">(std::move(conditions)));
}

Amount count_of(std::size_t count) {
    return {static_cast<double>(count), unit::none, 12};
}

Sentences heat_remarks(const ScreenContext& context) {
    if (!context.installation->store) {
        return {say<"rank.no_store">()};
    }
    return fill_warnings(find_medium(*context.parts, context.installation->store->medium));
}

Sentences panel_remarks(const ScreenContext& context) {
    Sentences remarks;
    const std::size_t groups = context.installation->panels.size();
    for (std::size_t group = 0; group < std::min(groups, few_groups); ++group) {
        const PanelInService panel = panel_of(context, group);
        append(remarks, panel.remarks);
        for (const Sentence& warning : panel.as_new.warnings) {
            remarks.push_back(
                say<"rank.of_panel">(with<"panel">(panel.panel.id), with<"warning">(warning)));
        }
    }
    if (groups > few_groups) {
        remarks.push_back(say<"rank.first_groups">(with<"listed">(count_of(few_groups)),
                                                   with<"groups">(count_of(groups))));
    }
    return remarks;
}

/// `candidates`: those of all chosen pairings, in their order.
void take_recommendation(Ranking& ranking, const Recommendation& chosen,
                         std::vector<Candidate> candidates) {
    if (!chosen.first) return;
    ranking.recommended = std::move(candidates.front());
    for (std::size_t i = 0; i < chosen.alternatives.size(); ++i) {
        ranking.alternatives.push_back(
            {.kind = chosen.alternatives[i].first, .candidate = std::move(candidates[i + 1])});
    }
}

}  // namespace

Ranking rank(const Parts& catalog, const Installation& installation, const RankOptions& options) {
    check_rank_options(options);
    check_lists(installation);
    const auto shared = std::make_shared<const Parts>(merged_parts(catalog, installation));
    const Parts& parts = *shared;
    check_installation(installation, parts);
    if (!options.group.empty()) static_cast<void>(find_group(installation, options.group));
    Sentences weather_remarks;
    const auto weather = options.weather
                             ? options.weather
                             : own_weather(installation, weather_remarks,
                                           options.memory ? &options.memory->weather : nullptr);
    GroupSeasons seasons;
    if (weather) seasons = GroupSeasons(weather, parts, installation, options);
    const SeasonWeather* const season = seasons.first();
    const std::vector<ExistingCircuit> circuits = existing_circuits(installation);
    // The runs of several circuits are not one chain: only those of the first are used.
    Installation judged = circuits.size() > 1 ? installation_of(installation, 0) : installation;
    if (options.volts_max) judged.goals.volts_max = options.volts_max;
    if (season != nullptr) {
        // All are judged under the brightest sun on the plane of any group.
        judged.site.bright_irradiance_w_m2 =
            judged_irradiance_w_m2(*seasons.brightest(), installation.site);
    }
    ScreenContext context = screen_context(parts, judged, options, season);
    if (season != nullptr) context.seasons = &seasons;
    const Tally tally = screen_all(context);
    const Recommendation chosen = recommend(context, tally.shortlist);

    Ranking ranking{.evaluated = tally.evaluated,
                    .above_volts = tally.above_volts,
                    .volts_max = judged.goals.volts_max,
                    .conditions = options.conditions,
                    .by_season = season != nullptr};
    for (std::size_t i = 1; i < tally.counts.size(); ++i) {
        if (tally.counts[i] == 0) continue;
        ranking.reasons[context.reasons->name(static_cast<std::uint32_t>(i))] = tally.counts[i];
    }
    std::vector<Pairing> front = tally.front.sorted();
    const std::size_t whole_front = front.size();
    front.resize(std::min(whole_front, std::max(options.top, least_front)));
    const std::vector<Pairing> kept = tally.sorted();
    auto lists = Evaluation(context, {kept, tally.rejected.sorted(), front, chosen.all()}).run();
    for (std::size_t i = 0; i < kept.size(); ++i) lists[0][i].like_it = kept[i].like_it;
    std::optional<SpaceBalance> space;
    if (installation.space) space = space_balance(*installation.space, parts);
    if (space && season != nullptr) {
        space->needed_kwh_per_day = needed_kwh_per_day(*space, *weather, season->months);
    }
    for (auto& list : lists) {
        for (Candidate& candidate : list) {
            candidate.catalog = shared;
            candidate.space = space;
        }
    }
    ranking.candidates = std::move(lists[0]);
    ranking.rejected = std::move(lists[1]);
    ranking.pareto = std::move(lists[2]);
    take_recommendation(ranking, chosen, std::move(lists[3]));
    if (!chosen.first) ranking.lacking = what_lacks(context, judged);

    append(ranking.remarks, weather_remarks);
    ranking.remarks.push_back(order_remark(context));
    if (season != nullptr) {
        append(ranking.remarks, season->remarks);
        const Sentence bright = bright_remark(*seasons.brightest(), installation.site);
        if (!bright.empty()) ranking.remarks.push_back(bright);
    }
    if (front.size() < whole_front) {
        ranking.remarks.push_back(say<"rank.front_cut">(with<"all">(count_of(whole_front)),
                                                        with<"kept">(count_of(front.size()))));
    }
    append(ranking.remarks, heat_remarks(context));
    if (circuits.size() > 1) {
        ranking.remarks.push_back(say<"rank.alone">(with<"count">(count_of(circuits.size())),
                                                    with<"first">(circuits.front().name)));
    }
    append(ranking.remarks, panel_remarks(context));
    const auto unpriced = static_cast<std::size_t>(std::count_if(
        ranking.candidates.begin(), ranking.candidates.end(),
        [](const auto& each) { return each.bill.within_budget() == Answer::unknown; }));
    if (unpriced > 0) {
        ranking.remarks.push_back(say<"rank.bill_not_known">(with<"count">(count_of(unpriced))));
    }
    if (context.banks.empty()) {
        ranking.remarks.push_back(say<"rank.no_element">());
    }
    if (tally.left_out > 0) {
        ranking.remarks.push_back(say<"rank.left_out">(with<"pairings">(count_of(tally.left_out))));
    }
    return ranking;
}

}  // namespace heatmatch
