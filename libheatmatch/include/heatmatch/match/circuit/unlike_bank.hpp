#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/match/circuit/bank.hpp"
#include "heatmatch/match/circuit/bank_tree.hpp"

namespace heatmatch {

/// Elements that differ, or that are in unequal places, in any tree of series and parallel
/// connections. Elements count in the order of the text.
struct UnlikeBank {
    BankTree tree{};
    std::vector<Bank> elements{};  //!< each alone, as a bank of one with its place

    /// Resistance of each element at one end of its band [ohm].
    [[nodiscard]] std::vector<double> ohms(double ElementResistance::*end) const;
    /// Resistance of the bank with every element at that end [ohm].
    [[nodiscard]] double resistance_ohm(double ElementResistance::*end) const;
    /// Typical resistance of the bank with each element open in turn [ohm]; infinite where nothing
    /// is left.
    [[nodiscard]] std::vector<double> with_each_open_ohm() const;
    /// Share of each element in the power of the bank, typical.
    [[nodiscard]] std::vector<double> power_shares() const;
    /// `element "rod-a"`; with its number in the text where the same id is in another place too.
    [[nodiscard]] std::string title_of(std::size_t element) const;
    /// The elements whose titles differ, in their order: the others are equal to one of these, in
    /// an equal place.
    [[nodiscard]] std::vector<std::size_t> distinct() const;

    friend bool operator==(const UnlikeBank&, const UnlikeBank&) = default;
};

/// The bank of those elements in that tree; each is a bank of one. Equal elements that are a plain
/// hook-up make a bank of equal elements. Throws InvalidInput for an element whose resistance is
/// not fixed.
[[nodiscard]] Bank bank_of(BankTree tree, std::vector<Bank> elements);

/// The bank of a layout of ids of elements, with its resistance at the coil temperature; all of
/// them are owned. Throws InvalidInput as BankTree::parse() and bank_of() do, and for an unknown
/// id.
[[nodiscard]] Bank lay_bank(const Parts& parts, std::string_view layout, double coil_temperature_c);

}  // namespace heatmatch
