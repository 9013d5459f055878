#include "heatmatch/match/circuit/unlike_bank.hpp"

#include "match/circuit/sentences.hpp"

#include <algorithm>
#include <limits>
#include <memory>
#include <utility>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

void refuse_varying(const Element& element) {
    throw InvalidInput(ErrorDetail{.part = "circuit",
                                   .field = "elements",
                                   .value = quote(element.id),
                                   .allowed = "an element of fixed resistance",
                                   .remedy = say<"circuit.fixed_elements">()});
}

/// Share of each branch in the current of the bank.
std::vector<double> branch_shares(const BankTree& tree, const std::vector<double>& ohm) {
    if (tree.branches() == 1) return {1.0};
    const std::vector<std::size_t> branch = tree.branch_of_each();
    const double bank_ohm = tree.resistance_ohm(ohm);
    // At that voltage the bank has one ampere, and each watt of a branch is a share of its own.
    const std::vector<OperatingPoint> points = tree.at_voltage(ohm, bank_ohm);
    std::vector<double> shares(tree.branches(), 0.0);
    for (std::size_t i = 0; i < points.size(); ++i) {
        shares[branch[i]] += points[i].power_w / bank_ohm;
    }
    return shares;
}

/// Sets the place of each element over the ends of all resistances.
void set_places(UnlikeBank& bank) {
    const std::vector<std::size_t> branch = bank.tree.branch_of_each();
    const std::vector<double> low = bank.ohms(&ElementResistance::low_ohm);
    const std::vector<double> high = bank.ohms(&ElementResistance::high_ohm);
    std::vector<PlaceInBank> places(low.size());
    double branch_share = 0.0;
    for (std::size_t corner = 0; corner < std::size_t{1} << low.size(); ++corner) {
        std::vector<double> ohm = low;
        for (std::size_t i = 0; i < ohm.size(); ++i) {
            if (((corner >> i) & 1U) != 0) ohm[i] = high[i];
        }
        const std::vector<double> shares = branch_shares(bank.tree, ohm);
        const std::vector<OperatingPoint> points =
            bank.tree.at_voltage(ohm, bank.tree.resistance_ohm(ohm));
        for (std::size_t i = 0; i < points.size(); ++i) {
            const double own = points[i].current_a;
            places[i].share_of_bank = std::min(places[i].share_of_bank, own);
            places[i].share_of_branch =
                std::min(places[i].share_of_branch, own / shares[branch[i]]);
        }
        branch_share = std::max(branch_share, *std::max_element(shares.begin(), shares.end()));
    }
    double squares = 0.0;
    for (const double share :
         branch_shares(bank.tree, bank.ohms(&ElementResistance::typical_ohm))) {
        squares += share * share;
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
        places[i].branch_share = branch_share;
        places[i].branch_wire_share = squares;
        bank.elements[i].place = places[i];
    }
}

}  // namespace

std::vector<double> UnlikeBank::ohms(double ElementResistance::*end) const {
    std::vector<double> found;
    found.reserve(elements.size());
    for (const Bank& element : elements) found.push_back(element.each.*end);
    return found;
}

double UnlikeBank::resistance_ohm(double ElementResistance::*end) const {
    return tree.resistance_ohm(ohms(end));
}

std::vector<double> UnlikeBank::with_each_open_ohm() const {
    std::vector<double> ohm = ohms(&ElementResistance::typical_ohm);
    std::vector<double> left;
    for (double& one : ohm) {
        const double kept = std::exchange(one, std::numeric_limits<double>::infinity());
        left.push_back(tree.resistance_ohm(ohm));
        one = kept;
    }
    return left;
}

std::vector<double> UnlikeBank::power_shares() const {
    const std::vector<double> ohm = ohms(&ElementResistance::typical_ohm);
    // At that voltage the bank has one ampere and as many watts as ohms.
    const double bank_ohm = tree.resistance_ohm(ohm);
    std::vector<double> shares;
    for (const OperatingPoint& point : tree.at_voltage(ohm, bank_ohm)) {
        shares.push_back(point.power_w / bank_ohm);
    }
    return shares;
}

std::string UnlikeBank::title_of(std::size_t element) const {
    const std::vector<std::size_t> places = tree.equal_places();
    const std::string& id = tree.elements[element];
    std::string title = "element \"" + id + '"';
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (tree.elements[i] != id || places[i] == places[element]) continue;
        return title + " at place " + std::to_string(places[element] + 1);
    }
    return title;
}

std::vector<std::size_t> UnlikeBank::distinct() const {
    const std::vector<std::size_t> places = tree.equal_places();
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (places[i] == i) found.push_back(i);
    }
    return found;
}

Bank bank_of(BankTree tree, std::vector<Bank> elements) {
    const auto varying = std::find_if(elements.begin(), elements.end(),
                                      [](const Bank& element) { return !element.each.fixed; });
    if (varying != elements.end()) refuse_varying(varying->element);
    Bank made{.owned = static_cast<int>(elements.size()),
              .coil_temperature_c = elements.front().coil_temperature_c};
    const auto same = [&elements](const Bank& element) {
        return element.element == elements.front().element;
    };
    const std::optional<Hookup> hookup = tree.hookup();
    if (hookup && std::all_of(elements.begin(), elements.end(), same)) {
        const int owned = made.owned;
        made = std::move(elements.front());
        made.hookup = *hookup;
        made.owned = owned;
        return made;
    }
    UnlikeBank unlike{.tree = std::move(tree), .elements = std::move(elements)};
    set_places(unlike);
    made.unlike = std::make_shared<const UnlikeBank>(std::move(unlike));
    return made;
}

Bank lay_bank(const Parts& parts, std::string_view layout, double coil_temperature_c) {
    BankTree tree = BankTree::parse(layout, "circuit", "elements");
    std::vector<Bank> elements;
    for (const std::string& id : tree.elements) {
        elements.push_back(make_bank(parts, find_element(parts, id), {}, 1, coil_temperature_c));
    }
    return bank_of(std::move(tree), std::move(elements));
}

}  // namespace heatmatch
