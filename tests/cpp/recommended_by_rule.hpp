#pragma once

#include "demo.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "heatmatch/match/margins/touch_limit.hpp"

/// The rules of recommendation and folding, applied to candidates with all their margins.
namespace by_rule {

using heatmatch::AlternativeKind;
using heatmatch::Candidate;
using heatmatch::Severity;

/// Every pairing without a likely danger.
inline std::vector<Candidate> whole_list(const heatmatch::Installation& installation) {
    heatmatch::RankOptions options = keep_all();
    options.fold = false;
    return heatmatch::rank(starter(), installation, options).candidates;
}

/// Elements that a bank has, wherever they come from.
inline int elements_of(const Candidate& candidate) {
    return candidate.circuit.bank.hookup.count();
}

inline bool is_assessed(const Candidate& candidate) {
    // In the words of the rule: sheath, survivor, stagnation, terminal, tail, each run's insulation
    // and current, cold volts, dc breaking, floor, pressure, vessel.
    const std::set<std::string> deciding{"sheath temperature",
                                         "survivor sheath",
                                         "stagnation",
                                         "terminal temperature",
                                         "hot tail insulation",
                                         "wire",
                                         "insulation",
                                         "run current",
                                         "cold voltage",
                                         "dc breaking",
                                         "floor",
                                         "pressure",
                                         "vessel material"};
    const auto& margins = candidate.margins();
    return std::none_of(margins.begin(), margins.end(), [&](const heatmatch::Margin& margin) {
        return margin.severity == Severity::not_assessed && deciding.contains(margin.name);
    });
}

inline bool may_be_recommended(const Candidate& candidate) {
    return candidate.severity() != Severity::danger && is_assessed(candidate) &&
           candidate.bill.complete() && candidate.bill.within_budget() == heatmatch::Answer::yes;
}

inline double pieces(const Candidate& candidate) {
    double count = 0.0;
    for (const heatmatch::BillLine& line : candidate.bill.lines) {
        if (line.kind != heatmatch::PartKind::wire) count += line.quantity;
    }
    return count;
}

/// Steps of 0.05 up to 0.30.
inline int step(const Candidate& candidate) {
    const double headroom = candidate.smallest_headroom();
    int reached = 0;
    for (const double edge : {0.05, 0.10, 0.15, 0.20, 0.25, 0.30}) {
        if (headroom > edge - 1e-9) ++reached;
    }
    return reached;
}

/// Cents, so that two sums of the same prices are equal.
inline double cents(const Candidate& candidate) {
    return std::round(100.0 * candidate.bill.typical().value());
}

inline int percents(const Candidate& candidate) {
    return static_cast<int>(std::floor(100.0 * candidate.smallest_headroom() + 1e-9));
}

using List = std::vector<const Candidate*>;

/// The first by an order, among those with at least that share of the list's best heat.
template <class Order>
const Candidate* first_of(const List& list, double share, const Order& order) {
    if (list.empty()) return nullptr;
    double most = 0.0;
    for (const Candidate* each : list) most = std::max(most, each->objective());
    const Candidate* first = nullptr;
    for (const Candidate* each : list) {
        if (each->objective() < share * most) continue;
        if (first == nullptr || order(*each) < order(*first)) first = each;
    }
    return first;
}

inline const Candidate* recommended(const List& list) {
    return first_of(list, 0.95, [](const Candidate& c) {
        return std::tuple(-step(c), cents(c), pieces(c), -c.objective());
    });
}

/// Those that could be recommended: without a worst-case danger if there are any.
inline List eligible(const std::vector<Candidate>& whole) {
    List clear;
    List all;
    for (const Candidate& candidate : whole) {
        if (!may_be_recommended(candidate)) continue;
        all.push_back(&candidate);
        if (candidate.worst_severity() != Severity::danger) clear.push_back(&candidate);
    }
    return clear.empty() ? all : clear;
}

inline const Candidate* alternative(const List& list, AlternativeKind kind) {
    List some;
    switch (kind) {
        case AlternativeKind::most_heat:
            return first_of(list, 1.0, [](const Candidate& c) { return -c.objective(); });
        case AlternativeKind::least_money:
            return first_of(
                list, 0.5, [](const Candidate& c) { return std::tuple(cents(c), -c.objective()); });
        case AlternativeKind::coolest:
            return first_of(list, 0.5, [](const Candidate& c) {
                return std::tuple(-percents(c), -c.objective());
            });
        case AlternativeKind::below_touch_voltage:
            for (const Candidate* each : list) {
                if (each->circuit.cold_voltage_v() <= heatmatch::touch_limit_v(each->site)) {
                    some.push_back(each);
                }
            }
            return recommended(some);
        case AlternativeKind::all_owned:
            for (const Candidate* each : list) {
                if (each->bill.typical() == 0.0) some.push_back(each);
            }
            return recommended(some);
    }
    return nullptr;
}

/// Array, element and number of elements.
inline std::string parts_of(const Candidate& candidate) {
    return candidate.circuit.owned.group + candidate.circuit.panels.label() +
           candidate.circuit.bank.element.id + std::to_string(elements_of(candidate));
}

/// Array, element and ratio: one load.
inline std::string load_of(const Candidate& candidate) {
    const heatmatch::Hookup bank = candidate.circuit.bank.hookup;
    const double ratio = static_cast<double>(bank.series) / bank.parallel;
    return candidate.circuit.owned.group + candidate.circuit.panels.label() +
           candidate.circuit.bank.element.id + std::to_string(ratio);
}

inline int heat_step(const Candidate& candidate) {
    return static_cast<int>(std::floor(std::log(candidate.objective()) / std::log(1.01) + 1e-9));
}

/// Whether `a` is no worse than `b` in anything that folding compares.
inline bool no_worse(const Candidate& a, const Candidate& b) {
    const auto headroom = [](const Candidate& c) { return std::min(c.smallest_headroom(), 0.30); };
    const auto bill_a = a.bill.typical();
    const auto bill_b = b.bill.typical();
    return load_of(a) == load_of(b) && heat_step(a) == heat_step(b) &&
           a.not_assessed() <= b.not_assessed() && headroom(a) >= headroom(b) - 1e-9 && bill_a &&
           bill_b && *bill_a <= *bill_b + 1e-9 && a.worst_severity() <= b.worst_severity();
}

/// Whether `b` is folded under `a`.
inline bool covers(const Candidate& a, const Candidate& b) {
    if (&a == &b || !no_worse(a, b)) return false;
    return !no_worse(b, a) || elements_of(a) < elements_of(b);
}

/// A row of the folded list: its title, and how many are like it.
struct Row {
    std::string title{};
    int like_it = 0;

    friend bool operator==(const Row&, const Row&) = default;
};

inline std::vector<Row> folded(const std::vector<Candidate>& whole) {
    std::vector<const Candidate*> kept;
    for (const Candidate& candidate : whole) {
        const bool under = std::any_of(whole.begin(), whole.end(), [&](const Candidate& other) {
            return covers(other, candidate);
        });
        if (!under) kept.push_back(&candidate);
    }
    std::vector<Row> rows;
    for (const Candidate* row : kept) rows.push_back({.title = row->circuit.title()});
    for (const Candidate& candidate : whole) {
        if (std::find(kept.begin(), kept.end(), &candidate) != kept.end()) continue;
        // The whole list is in order: the first one that covers it.
        for (std::size_t i = 0; i < kept.size(); ++i) {
            if (!no_worse(*kept[i], candidate)) continue;
            ++rows[i].like_it;
            break;
        }
    }
    return rows;
}

}  // namespace by_rule
