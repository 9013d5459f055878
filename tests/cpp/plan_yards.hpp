#pragma once

#include "demo.hpp"
#include "dice.hpp"
#include "long_run.hpp"
#include "match/plan/array_energies.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/candidate/unlike_season.hpp"
#include "heatmatch/match/circuit/bank_tree.hpp"
#include "heatmatch/match/plan/plan_banks.hpp"
#include "heatmatch/match/plan/plan_judge.hpp"
#include "heatmatch/solar/mixed_energy.hpp"
#include "heatmatch/solar/own_weather.hpp"

/// A yard of up to six panels of three kinds and four elements of three kinds, for two circuits.
inline heatmatch::Installation small_yard(Dice& dice) {
    heatmatch::Installation yard = demo();
    yard.circuit.reset();
    yard.panels.clear();
    const std::vector<std::string> panels{"silicon-60-cell-245", "silicon-36-cell-135", "cdte-100"};
    int left = dice.from(2, in_the_long_run() ? 6 : 4);
    for (const std::string& panel : panels) {
        const int count = std::min(left, dice.from(0, 3));
        if (count == 0) continue;
        yard.panels.push_back({.group = "group " + panel, .panel = panel, .count = count});
        yard.panels.back().age_years = dice.between(0.0, 20.0);
        yard.panels.back().rear_blocked = true;
        left -= count;
        if (dice.from(0, 3) > 0) continue;
        yard.panels.back().shade_pct = {dice.between(20.0, 80.0)};
        if (panel != "cdte-100") yard.panels.back().shaded_substrings = 1;
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
    std::map<std::string, int> elements{};  //!< of each kind
    std::vector<int> panels{};              //!< of each group
    double headroom = 0.0;
    double kwh = 0.0;
};

/// Every array of a yard, as counts of each group in each string: strings within a quarter of the
/// lowest Vmp of them, in falling order of their counts.
class EveryArray {
  public:
    explicit EveryArray(const heatmatch::Installation& yard) {
        for (const heatmatch::OwnedPanels& owned : yard.panels) {
            left_.push_back(owned.count);
            vmp_.push_back(
                *heatmatch::fill_class_defaults(heatmatch::find_panel(starter(), owned.panel))
                     .panel.v_mp);
        }
        extend({});
    }
    std::vector<std::vector<std::vector<int>>> arrays{};

  private:
    void extend(std::vector<std::vector<int>> array) {
        if (!array.empty()) arrays.push_back(array);
        std::vector<int> string(left_.size(), 0);
        add_string(array, string, 0);
    }

    /// One more string that is not above the last one.
    void add_string(const std::vector<std::vector<int>>& array, std::vector<int>& string,
                    std::size_t group) {
        if (group == left_.size()) {
            const bool none =
                std::all_of(string.begin(), string.end(), [](int n) { return n == 0; });
            if (none || (!array.empty() && string > array.back())) return;
            auto longer = array;
            longer.push_back(string);
            if (!alike(longer)) return;
            for (std::size_t g = 0; g < left_.size(); ++g) left_[g] -= string[g];
            extend(std::move(longer));
            for (std::size_t g = 0; g < left_.size(); ++g) left_[g] += string[g];
            return;
        }
        for (int count = 0; count <= left_[group]; ++count) {
            string[group] = count;
            add_string(array, string, group + 1);
        }
        string[group] = 0;
    }

    [[nodiscard]] bool alike(const std::vector<std::vector<int>>& array) const {
        double low = 1e9;
        double high = 0.0;
        for (const std::vector<int>& string : array) {
            double volts = 0.0;
            for (std::size_t g = 0; g < string.size(); ++g) volts += string[g] * vmp_[g];
            low = std::min(low, volts);
            high = std::max(high, volts);
        }
        return high <= 1.25 * low * (1.0 + 1e-9);
    }

    std::vector<int> left_{};
    std::vector<double> vmp_{};
};

/// The most heat of any plan at that headroom, by trying every array with every bank, and every
/// pair of them in falling order of their heat [kWh].
class PlainEnumeration {
  public:
    PlainEnumeration(const heatmatch::Installation& yard,
                     const std::shared_ptr<const heatmatch::Weather>& weather)
        : yard_(yard),
          parts_(std::make_shared<const heatmatch::Parts>(starter())),
          judge_(parts_, yard, {}, weather),
          weather_(weather),
          season_(heatmatch::season_weather(*weather, yard.goals.months)) {
        for (const auto& array : EveryArray(yard).arrays) add_banks(array);
    }

    [[nodiscard]] double best_kwh(double headroom) {
        std::vector<TriedCircuit> good;
        for (const TriedCircuit& one : tried_) {
            if (one.headroom >= headroom) good.push_back(one);
        }
        std::sort(good.begin(), good.end(),
                  [](const auto& a, const auto& b) { return a.kwh > b.kwh; });
        double best = good.empty() ? 0.0 : good.front().kwh;
        std::vector<std::pair<double, std::pair<std::size_t, std::size_t>>> pairs;
        for (std::size_t i = 0; i < good.size(); ++i) {
            for (std::size_t k = i; k < good.size(); ++k) {
                if (!enough(good[i], good[k])) continue;
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
    [[nodiscard]] int elements_of(const std::string& id) const {
        int count = 0;
        for (const auto& entry : yard_.elements) count += entry.element == id ? entry.count : 0;
        return count;
    }

    void add_banks(const std::vector<std::vector<int>>& array) {
        std::vector<std::string> seen;
        for (const auto& entry : yard_.elements) {
            if (std::find(seen.begin(), seen.end(), entry.element) != seen.end()) continue;
            seen.push_back(entry.element);
            const int most = elements_of(entry.element);
            for (int series = 1; series <= most; ++series) {
                for (int parallel = 1; series * parallel <= most; ++parallel) {
                    const heatmatch::Hookup bank{.series = series, .parallel = parallel};
                    add({.element = entry.element, .bank = bank.label()},
                        {{entry.element, series * parallel}}, array);
                }
            }
        }
        std::vector<heatmatch::OwnedElements> owned;
        for (const std::string& element : seen) owned.push_back({element, elements_of(element)});
        for (const heatmatch::Layout& layout : heatmatch::unlike_banks(owned)) {
            std::map<std::string, int> elements;
            const std::string text = layout.text();
            for (const auto& id : heatmatch::BankTree::parse(text, "test", "elements").elements) {
                ++elements[id];
            }
            add({.elements = text}, elements, array);
        }
    }

    void add(heatmatch::ExistingCircuit circuit, const std::map<std::string, int>& elements,
             const std::vector<std::vector<int>>& array) {
        std::vector<int> panels(yard_.panels.size(), 0);
        set_array(circuit, panels, array);
        const heatmatch::PlanVerdict verdict = judge_.judge({&circuit, 1});
        if (!verdict.good() || verdict.headroom < 0.0) return;
        tried_.push_back({circuit, elements, panels, verdict.headroom, heat_of(circuit)});
    }

    /// Equal strings of one group as a hook-up, others as a layout.
    void set_array(heatmatch::ExistingCircuit& circuit, std::vector<int>& panels,
                   const std::vector<std::vector<int>>& array) const {
        std::string text;
        for (const std::vector<int>& string : array) {
            text += text.empty() ? "" : " | ";
            std::string series;
            for (std::size_t g = 0; g < string.size(); ++g) {
                panels[g] += string[g];
                if (string[g] == 0) continue;
                series += (series.empty() ? "" : " + ") + yard_.panels[g].group + " x" +
                          std::to_string(string[g]);
            }
            text += series;
        }
        const auto groups =
            std::count_if(panels.begin(), panels.end(), [](int n) { return n > 0; });
        if (groups != 1 || array.front() != array.back()) {
            circuit.array = text;
            return;
        }
        for (std::size_t g = 0; g < panels.size(); ++g) {
            if (panels[g] == 0) continue;
            circuit.group = yard_.panels[g].group;
            circuit.panels = heatmatch::Hookup{.series = array.front()[g],
                                               .parallel = static_cast<int>(array.size())}
                                 .label();
        }
    }

    /// By the season of a ranking, or the curve of the whole array over the same nodes.
    [[nodiscard]] double heat_of(const heatmatch::ExistingCircuit& circuit) {
        const heatmatch::Circuit wired = judge_.wired(circuit);
        if (!wired.unlike && !wired.owned.shade_pct.empty()) {
            heatmatch::RankOptions options;
            options.weather = weather_;
            const auto assessed =
                heatmatch::assess_circuits(starter(), judge_.with({&circuit, 1}), options);
            return assessed.front().season->kwh;
        }
        if (!wired.unlike) {
            return season_of(wired, season_curves(wired.panel, season_), season_, std::nullopt).kwh;
        }
        const heatmatch::ArraySun sun = heatmatch::array_sun(*wired.unlike, *weather_, yard_.site);
        heatmatch::PlacedArray placed = sun.placed(*wired.unlike, heatmatch::PanelState::today);
        placed.planes = heatmatch::plane_nodes(
            sun.all(), heatmatch::season_node_options(yard_.goals.months, false));
        const double match_ohm = heatmatch::stc_match_ohm(placed.array);
        return heatmatch::EnergyCurve(std::move(placed), match_ohm,
                                      heatmatch::resistances_of_search)
            .delivered_kwh(wired.bank.typical_ohm(), wired.wire_ohm());
    }

    [[nodiscard]] bool enough(const TriedCircuit& a, const TriedCircuit& b) const {
        for (std::size_t g = 0; g < a.panels.size(); ++g) {
            if (a.panels[g] + b.panels[g] > yard_.panels[g].count) return false;
        }
        return std::all_of(a.elements.begin(), a.elements.end(), [&](const auto& entry) {
            const auto other = b.elements.find(entry.first);
            const int more = other == b.elements.end() ? 0 : other->second;
            return entry.second + more <= elements_of(entry.first);
        });
    }

    const heatmatch::Installation& yard_;
    std::shared_ptr<const heatmatch::Parts> parts_;
    heatmatch::PlanJudge judge_;
    std::shared_ptr<const heatmatch::Weather> weather_;
    heatmatch::SeasonWeather season_;
    std::vector<TriedCircuit> tried_{};
};
