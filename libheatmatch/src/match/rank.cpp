#include "heatmatch/match/rank.hpp"

#include "pairings.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

namespace {

/// Step of 1 % below the best: 0 for the best itself.
int bucket(double power_w, double best_w) {
    if (power_w <= 0.0 || best_w <= 0.0) return std::numeric_limits<int>::max();
    return static_cast<int>(std::floor(std::log(power_w / best_w) / std::log(0.99) + 1e-9));
}

/// Best first: power in steps of 1 %, then data, then headroom, then price.
void sort_candidates(std::vector<const Pairing*>& pairings) {
    double best_w = 0.0;
    for (const Pairing* pairing : pairings) best_w = std::max(best_w, pairing->power_w);
    std::stable_sort(pairings.begin(), pairings.end(),
                     [best_w](const Pairing* a, const Pairing* b) {
                         const int bucket_a = bucket(a->power_w, best_w);
                         const int bucket_b = bucket(b->power_w, best_w);
                         if (bucket_a != bucket_b) return bucket_a < bucket_b;
                         if (a->not_assessed != b->not_assessed)
                             return a->not_assessed < b->not_assessed;
                         if (a->headroom != b->headroom) return a->headroom > b->headroom;
                         if (a->price != b->price) return a->price < b->price;
                         return a->power_w > b->power_w;
                     });
}

void check_installation(const Installation& installation) {
    const auto refuse = [](const char* field, const char* remedy) {
        throw InvalidInput(ErrorDetail{.part = "installation",
                                       .field = field,
                                       .value = "(none)",
                                       .allowed = "at least one entry",
                                       .remedy = remedy});
    };
    if (installation.panels.empty()) {
        refuse("panels", R"(list what you own: {"group": "barn pair", "panel": "id", "count": 2})");
    }
    if (installation.elements.empty()) {
        refuse("elements", R"(list what you own or may buy: {"any": {}, "count": 4} allows all)");
    }
}

std::vector<std::string> remarks_of(const Pairings& pairings, const RankOptions& options) {
    std::vector<std::string> remarks;
    std::string conditions;
    for (const Condition& condition : options.conditions) {
        conditions += (conditions.empty() ? "" : ", ") + format_number(condition.irradiance_w_m2) +
                      " W/m2 at " + format_number(condition.cell_temperature_c) + " °C cells";
    }
    remarks.push_back("Ordered by power averaged over " + conditions +
                      "; the year's weather is not part of this version.");
    remarks.push_back(
        "Heat in the store is not part of this version: in dry sand the sheath, not "
        "the rated watts, limits an element.");
    for (const GroupContext& group : pairings.groups) {
        remarks.insert(remarks.end(), group.panel.remarks.begin(), group.panel.remarks.end());
        for (const std::string& warning : group.panel.as_new.warnings) {
            remarks.push_back("panel \"" + group.panel.panel.id + "\": " + warning);
        }
    }
    if (pairings.banks.empty()) {
        remarks.push_back(
            "No element of the catalog passes the filters of the installation: widen "
            "\"any\", or name an element you own.");
    }
    for (const auto& [reason, count] : pairings.left_out) {
        remarks.push_back(std::to_string(count) + " pairings left out: " + reason);
    }
    return remarks;
}

/// Full candidates of the pairings that are kept, telling how far it is.
class Evaluation {
  public:
    Evaluation(const Pairings& pairings, const Installation& installation,
               const RankOptions& options, std::size_t total)
        : pairings_(pairings), installation_(installation), options_(options), total_(total) {}

    std::vector<Candidate> all(const std::vector<const Pairing*>& chosen, std::size_t most) {
        std::vector<Candidate> candidates;
        for (const Pairing* pairing : chosen) {
            if (candidates.size() == most) break;
            candidates.push_back(
                evaluate(circuit_of(pairings_, *pairing), installation_, options_.conditions));
            ++done_;
            const double share = static_cast<double>(done_) / static_cast<double>(total_);
            const double progress = screening_share + (1.0 - screening_share) * share;
            if (options_.progress && !options_.progress(progress)) throw Interrupted();
        }
        return candidates;
    }

  private:
    const Pairings& pairings_;
    const Installation& installation_;
    const RankOptions& options_;
    std::size_t total_;
    std::size_t done_ = 0;
};

}  // namespace

Ranking rank(const Parts& catalog, const Installation& installation, const RankOptions& options) {
    check_rank_options(options);
    check_installation(installation);
    const Parts parts = merged_parts(catalog, installation);
    check_references(installation, parts);
    const Pairings pairings = screen_all(parts, installation, options);

    Ranking ranking{.evaluated = pairings.all.size(), .conditions = options.conditions};
    std::vector<const Pairing*> kept;
    std::vector<const Pairing*> refused;
    for (const Pairing& pairing : pairings.all) {
        const auto& budget = installation.goals.budget;
        if (!pairing.reason.empty()) {
            ++ranking.reasons[pairing.reason];
            refused.push_back(&pairing);
        } else if (budget && std::isinf(pairing.price)) {
            ++ranking.reasons["price not known"];
        } else if (budget && pairing.price > *budget) {
            ++ranking.reasons["budget"];
        } else {
            kept.push_back(&pairing);
        }
    }
    sort_candidates(kept);
    std::stable_sort(refused.begin(), refused.end(),
                     [](const Pairing* a, const Pairing* b) { return a->power_w > b->power_w; });
    std::vector<Trade> trades;
    trades.reserve(kept.size());
    for (const Pairing* pairing : kept) {
        trades.push_back({pairing->power_w, pairing->headroom, pairing->price});
    }
    std::vector<const Pairing*> front;
    for (std::size_t index : pareto_front(trades)) front.push_back(kept[index]);

    Evaluation evaluation(pairings, installation, options,
                          std::min(kept.size(), options.top) + std::min(front.size(), options.top) +
                              std::min(refused.size(), options.keep_rejected));
    ranking.candidates = evaluation.all(kept, options.top);
    ranking.rejected = evaluation.all(refused, options.keep_rejected);
    ranking.pareto = evaluation.all(front, options.top);
    ranking.remarks = remarks_of(pairings, options);
    return ranking;
}

}  // namespace heatmatch
