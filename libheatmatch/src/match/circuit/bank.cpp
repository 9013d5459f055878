#include "heatmatch/match/circuit/bank.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

bool operator==(const Bank& a, const Bank& b) {
    if ((a.unlike == nullptr) != (b.unlike == nullptr)) return false;
    if (a.unlike && a.unlike != b.unlike && !(*a.unlike == *b.unlike)) return false;
    return a.element == b.element && a.alloy == b.alloy && a.sheath == b.sheath &&
           a.hookup == b.hookup && a.owned == b.owned &&
           a.coil_temperature_c == b.coil_temperature_c && a.each == b.each && a.place == b.place;
}

double Bank::of_unlike(double ElementResistance::*end) const {
    return unlike->resistance_ohm(end);
}

double Bank::with_one_branch_open(double ohm) const {
    if (unlike) {
        const std::vector<double> left = unlike->with_each_open_ohm();
        return ohm / typical_ohm() * *std::max_element(left.begin(), left.end());
    }
    if (hookup.parallel <= 1) return std::numeric_limits<double>::infinity();
    return ohm * hookup.parallel / (hookup.parallel - 1);
}

int Bank::count() const {
    return unlike ? static_cast<int>(unlike->elements.size()) : hookup.count();
}

int Bank::branches() const {
    return unlike ? static_cast<int>(unlike->tree.branches()) : hookup.parallel;
}

double Bank::branch_share() const {
    if (place) return place->branch_share;
    return unlike ? unlike->elements.front().branch_share() : 1.0 / hookup.parallel;
}

double Bank::branch_wire_share() const {
    if (place) return place->branch_wire_share;
    return unlike ? unlike->elements.front().branch_wire_share() : 1.0 / hookup.parallel;
}

double Bank::largest_power_share() const {
    if (!unlike) return 1.0 / hookup.count();
    const std::vector<double> shares = unlike->power_shares();
    return *std::max_element(shares.begin(), shares.end());
}

bool Bank::fixed() const {
    if (!unlike) return each.fixed;
    return std::all_of(unlike->elements.begin(), unlike->elements.end(),
                       [](const Bank& one) { return one.each.fixed; });
}

std::string Bank::label() const {
    return unlike ? unlike->tree.layout.text() : hookup.label();
}

std::string Bank::title() const {
    return unlike ? label() : element.id + ' ' + hookup.label();
}

std::vector<Bank> Bank::kinds() const {
    std::vector<Bank> found;
    if (!unlike) {
        found.push_back(*this);
        found.back().hookup = {};
        return found;
    }
    for (const Bank& one : unlike->elements) {
        const auto same = std::find_if(found.begin(), found.end(), [&one](const Bank& known) {
            return known.element == one.element;
        });
        if (same == found.end()) {
            found.push_back(one);
        } else {
            same->owned += one.owned;
        }
    }
    return found;
}

int Bank::count_of(const std::string& id) const {
    if (!unlike) return element.id == id ? hookup.count() : 0;
    return static_cast<int>(
        std::count(unlike->tree.elements.begin(), unlike->tree.elements.end(), id));
}

std::vector<Assumption> Bank::assumed() const {
    if (!unlike) return each.assumed;
    std::vector<Assumption> all;
    for (const Bank& kind : kinds()) {
        all.insert(all.end(), kind.each.assumed.begin(), kind.each.assumed.end());
    }
    return all;
}

Bank make_bank(const Parts& parts, const Element& element, Hookup hookup, int owned,
               double coil_temperature_c) {
    Bank bank{.element = element,
              .hookup = hookup,
              .owned = owned,
              .coil_temperature_c = coil_temperature_c};
    if (!element.alloy.empty()) bank.alloy = find_alloy(parts, element.alloy);
    if (!element.sheath.empty()) bank.sheath = find_sheath(parts, element.sheath);
    bank.each =
        element_resistance(element, bank.alloy ? &*bank.alloy : nullptr, coil_temperature_c);
    return bank;
}

}  // namespace heatmatch
