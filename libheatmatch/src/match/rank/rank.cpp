#include "heatmatch/match/rank/rank.hpp"

#include "screen.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <map>
#include <numeric>

#include "heatmatch/base/error.hpp"
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

/// Candidates of the kept pairings. Parts shared by several are computed once.
class Evaluation {
  public:
    Evaluation(const ScreenContext& context, std::vector<std::vector<Pairing>> lists)
        : context_(context), lists_(std::move(lists)) {
        for (const auto& list : lists_) {
            for (const Pairing& pairing : list) {
                groups_.try_emplace(group_key(pairing.group, pairing.panels));
                frames_.try_emplace(key(pairing));
            }
        }
    }

    /// One list of candidates for each list of pairings.
    std::vector<std::vector<Candidate>> run() {
        work_on(groups_, 0.1, [this](const GroupKey& key, Group& shared) {
            const auto [group, series] = key;
            shared.panel = panel_of(context_, group);
            if (context_.season != nullptr) {
                shared.curves = season_curves(shared.panel, *context_.season_for(group),
                                              context_.options->vector_width, series);
            }
        });
        work_on(frames_, 0.2, [this](const Key& key, Circuit& frame) {
            const PanelInService& panel = groups_.at(group_key(key.group, key.panels)).panel;
            frame = frame_of(context_, key.group, panel, key.panels, key.bank);
        });
        std::vector<std::vector<Candidate>> candidates(lists_.size());
        std::vector<std::pair<const Pairing*, Candidate*>> jobs;
        for (std::size_t l = 0; l < lists_.size(); ++l) {
            candidates[l].resize(lists_[l].size());
            for (std::size_t i = 0; i < lists_[l].size(); ++i) {
                jobs.emplace_back(&lists_[l][i], &candidates[l][i]);
            }
        }
        run_jobs(jobs.size(), 1.0,
                 [&](std::size_t i) { *jobs[i].second = candidate_of(*jobs[i].first); });
        return candidates;
    }

  private:
    struct Group {
        PanelInService panel{};
        std::optional<SeasonCurves> curves{};
    };
    /// A group, with the panels in a string where its blocking diode makes a difference.
    using GroupKey = std::pair<std::size_t, int>;
    [[nodiscard]] GroupKey group_key(std::size_t group, Hookup panels) const {
        const bool blocking = context_.installation->panels[group].blocking.value_or(false);
        return {group, blocking ? panels.series : 1};
    }
    /// Inputs of the runs of a circuit.
    struct Key {
        std::size_t group = 0;
        Hookup panels{};
        Hookup bank{};
        [[nodiscard]] auto order() const {
            return std::tuple(group, panels.series, panels.parallel, bank.series, bank.parallel);
        }
        friend bool operator<(const Key& a, const Key& b) { return a.order() < b.order(); }
    };

    [[nodiscard]] Key key(const Pairing& pairing) const {
        const Hookup bank =
            context_.branch_runs ? context_.banks[pairing.bank].hookup : context_.bank_hookups[0];
        return {pairing.group, pairing.panels, bank};
    }

    [[nodiscard]] Candidate candidate_of(const Pairing& pairing) const {
        const Group& group = groups_.at(group_key(pairing.group, pairing.panels));
        const Circuit circuit = circuit_of(context_, frames_.at(key(pairing)), pairing.bank);
        Candidate candidate = evaluate(circuit, *context_.installation,
                                       context_.options->conditions, *context_.parts);
        if (group.curves) {
            candidate.season =
                season_of(circuit, *group.curves, *context_.season_for(pairing.group),
                          candidate.price_to_buy);
        }
        return candidate;
    }

    template <class Work>
    void run_jobs(std::size_t count, double up_to, const Work& work) {
        const double from = reached_;
        const auto& asked = context_.options->progress;
        Progress progress;
        if (asked) {
            progress = [&asked, from, up_to](double share) {
                const double all = from + (up_to - from) * share;
                return asked(screening_share + (1.0 - screening_share) * all);
            };
        }
        parallel_for(
            count, worker_count(context_.options->threads, count),
            [&work](std::size_t item, std::size_t, const Pulse&) { work(item); }, progress);
        reached_ = up_to;
    }

    template <class Map, class Work>
    void work_on(Map& map, double up_to, const Work& work) {
        std::vector<typename Map::iterator> entries;
        for (auto it = map.begin(); it != map.end(); ++it) entries.push_back(it);
        run_jobs(entries.size(), up_to,
                 [&](std::size_t i) { work(entries[i]->first, entries[i]->second); });
    }

    const ScreenContext& context_;
    std::vector<std::vector<Pairing>> lists_;
    std::map<GroupKey, Group> groups_{};
    std::map<Key, Circuit> frames_{};
    double reached_ = 0.0;
};

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
    if (season != nullptr) {
        // All are judged under the brightest sun on the plane of any group.
        judged.site.bright_irradiance_w_m2 =
            judged_irradiance_w_m2(*seasons.brightest(), installation.site);
    }
    ScreenContext context = screen_context(parts, judged, options, season);
    if (season != nullptr) context.seasons = &seasons;
    const Tally tally = screen_all(context);

    Ranking ranking{.evaluated = tally.evaluated,
                    .conditions = options.conditions,
                    .by_season = season != nullptr};
    for (std::size_t i = 1; i < tally.counts.size(); ++i) {
        if (tally.counts[i] == 0) continue;
        ranking.reasons[context.reasons->name(static_cast<std::uint32_t>(i))] = tally.counts[i];
    }
    std::vector<Pairing> front = tally.front.sorted();
    const std::size_t whole_front = front.size();
    front.resize(std::min(whole_front, std::max(options.top, least_front)));
    auto lists = Evaluation(context, {tally.sorted(), tally.rejected.sorted(), front}).run();
    ranking.candidates = std::move(lists[0]);
    ranking.rejected = std::move(lists[1]);
    ranking.pareto = std::move(lists[2]);
    std::optional<SpaceBalance> space;
    if (installation.space) space = space_balance(*installation.space, parts);
    for (auto* list : {&ranking.candidates, &ranking.rejected, &ranking.pareto}) {
        for (Candidate& candidate : *list) {
            candidate.catalog = shared;
            candidate.space = space;
        }
    }

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
