#pragma once

#include "demo.hpp"
#include "dice.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/plan/plan_judge.hpp"
#include "heatmatch/solar/own_weather.hpp"

/// A yard of up to six panels of three kinds and four elements of three kinds, for two circuits.
inline heatmatch::Installation small_yard(Dice& dice) {
    heatmatch::Installation yard = demo();
    yard.circuit.reset();
    yard.panels.clear();
    const std::vector<std::string> panels{"silicon-60-cell-245", "silicon-36-cell-135", "cdte-100"};
    int left = dice.from(2, 6);
    for (const std::string& panel : panels) {
        const int count = std::min(left, dice.from(0, 3));
        if (count == 0) continue;
        yard.panels.push_back({.group = "group " + panel, .panel = panel, .count = count});
        yard.panels.back().age_years = dice.between(0.0, 20.0);
        yard.panels.back().rear_blocked = true;
        left -= count;
    }
    if (yard.panels.empty()) {
        yard.panels.push_back({.group = "pair", .panel = panels.front(), .count = 2});
    }
    yard.elements.clear();
    const std::vector<std::string> elements{"storage-rod-1000-240", "tubular-1000-120",
                                            "storage-rod-1050-230", "oven-bake-2585-240"};
    int elements_left = 4;
    for (int kind = 0; kind < 3 && elements_left > 0; ++kind) {
        const int count = std::min(elements_left, dice.from(1, 2));
        const std::string& element = elements[static_cast<std::size_t>(kind + dice.from(0, 1))];
        yard.elements.push_back({.element = element, .count = count});
        elements_left -= count;
    }
    yard.goals.circuits_max = 2;
    yard.goals.budget = dice.coin() ? 150.0 : 500.0;
    return yard;
}

/// A circuit of an enumeration, with its heat alone.
struct TriedCircuit {
    heatmatch::ExistingCircuit circuit{};
    double kwh = 0.0;
};

/// The most heat of any plan at that headroom, by trying every hook-up of every group with every
/// bank, and every pair of them in falling order of their heat [kWh].
class PlainEnumeration {
  public:
    PlainEnumeration(const heatmatch::Installation& yard,
                     const std::shared_ptr<const heatmatch::Weather>& weather)
        : yard_(yard),
          parts_(std::make_shared<const heatmatch::Parts>(starter())),
          judge_(parts_, yard, {}, weather),
          season_(heatmatch::season_weather(*weather, yard.goals.months)) {}

    [[nodiscard]] double best_kwh(double headroom) {
        std::vector<TriedCircuit> good = alone(headroom);
        std::sort(good.begin(), good.end(),
                  [](const auto& a, const auto& b) { return a.kwh > b.kwh; });
        double best = good.empty() ? 0.0 : good.front().kwh;
        std::vector<std::pair<double, std::pair<std::size_t, std::size_t>>> pairs;
        for (std::size_t i = 0; i < good.size(); ++i) {
            for (std::size_t k = i; k < good.size(); ++k) {
                if (!enough(good[i].circuit, good[k].circuit)) continue;
                pairs.push_back({good[i].kwh + good[k].kwh, {i, k}});
            }
        }
        std::sort(pairs.begin(), pairs.end(),
                  [](const auto& a, const auto& b) { return a.first > b.first; });
        for (const auto& [kwh, pair] : pairs) {
            if (kwh <= best) break;
            const std::vector<heatmatch::ExistingCircuit> both{good[pair.first].circuit,
                                                               good[pair.second].circuit};
            const heatmatch::PlanVerdict verdict = judge_.judge(both);
            if (verdict.good() && verdict.headroom >= headroom) return kwh;
        }
        return best;
    }

  private:
    [[nodiscard]] std::vector<TriedCircuit> alone(double headroom) {
        std::vector<TriedCircuit> good;
        for (const heatmatch::OwnedPanels& owned : yard_.panels) {
            for (int series = 1; series <= owned.count; ++series) {
                for (int parallel = 1; series * parallel <= owned.count; ++parallel) {
                    add_banks(owned, {.series = series, .parallel = parallel}, headroom, good);
                }
            }
        }
        return good;
    }

    [[nodiscard]] int elements_of(const std::string& id) const {
        int count = 0;
        for (const auto& entry : yard_.elements) count += entry.element == id ? entry.count : 0;
        return count;
    }

    void add_banks(const heatmatch::OwnedPanels& owned, heatmatch::Hookup panels, double headroom,
                   std::vector<TriedCircuit>& good) {
        std::vector<std::string> seen;
        for (const auto& entry : yard_.elements) {
            if (std::find(seen.begin(), seen.end(), entry.element) != seen.end()) continue;
            seen.push_back(entry.element);
            const int most = elements_of(entry.element);
            for (int series = 1; series <= most; ++series) {
                for (int parallel = 1; series * parallel <= most; ++parallel) {
                    const heatmatch::Hookup bank{.series = series, .parallel = parallel};
                    const heatmatch::ExistingCircuit circuit{.group = owned.group,
                                                             .panels = panels.label(),
                                                             .element = entry.element,
                                                             .bank = bank.label()};
                    const heatmatch::PlanVerdict verdict = judge_.judge({&circuit, 1});
                    if (!verdict.good() || verdict.headroom < headroom) continue;
                    good.push_back({circuit, heat_of(circuit)});
                }
            }
        }
    }

    /// By the season of a ranking.
    [[nodiscard]] double heat_of(const heatmatch::ExistingCircuit& circuit) {
        const heatmatch::Circuit wired = judge_.wired(circuit);
        return season_of(wired, season_curves(wired.panel, season_), season_, std::nullopt).kwh;
    }

    [[nodiscard]] bool enough(const heatmatch::ExistingCircuit& a,
                              const heatmatch::ExistingCircuit& b) const {
        const auto count = [](const std::string& hookup) {
            return heatmatch::parse_hookup(hookup, "test", "hook-up").count();
        };
        const int panels = heatmatch::find_group(yard_, a.group).count;
        if (a.group == b.group && count(a.panels) + count(b.panels) > panels) return false;
        return a.element != b.element || count(a.bank) + count(b.bank) <= elements_of(a.element);
    }

    const heatmatch::Installation& yard_;
    std::shared_ptr<const heatmatch::Parts> parts_;
    heatmatch::PlanJudge judge_;
    heatmatch::SeasonWeather season_;
};
