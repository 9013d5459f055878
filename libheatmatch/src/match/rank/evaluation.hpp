#pragma once

#include "screen.hpp"

#include <map>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

namespace heatmatch {

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

}  // namespace heatmatch
