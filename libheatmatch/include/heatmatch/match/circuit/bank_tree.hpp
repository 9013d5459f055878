#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/setting/layout.hpp"
#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// Most elements that a bank of unlike elements may have.
inline constexpr int most_bank_elements = 6;

/// A bank of unlike elements: any tree of series and parallel connections, for example
/// `[rod-a + rod-b] | rod-c`. Its elements are counted in the order of the text, repetitions
/// expanded.
struct BankTree {
    Layout layout{};                      //!< its names are ids of elements
    std::vector<std::string> elements{};  //!< ids, in the order of the text

    /// Throws InvalidInput for text that is no layout, or for more than six elements.
    [[nodiscard]] static BankTree parse(std::string_view text, std::string_view part,
                                        std::string_view field);
    /// Resistance of the bank [ohm]; `ohm` has that of each element, infinite for an open one. Each
    /// parallel branch has `branch_ohm` of wire in series.
    [[nodiscard]] double resistance_ohm(std::span<const double> ohm, double branch_ohm = 0.0) const;
    /// Volts, amperes and watts of each element with a voltage across the bank.
    [[nodiscard]] std::vector<OperatingPoint> at_voltage(std::span<const double> ohm,
                                                         double voltage_v,
                                                         double branch_ohm = 0.0) const;
    /// The number of parallel branches of the whole bank.
    [[nodiscard]] std::size_t branches() const;
    /// The branch of each element.
    [[nodiscard]] std::vector<std::size_t> branch_of_each() const;
    /// For each element the first one with the same id in an equal place: with equal resistances
    /// they have the same volts and amperes.
    [[nodiscard]] std::vector<std::size_t> equal_places() const;
    /// The hook-up where all elements have one id and are in equal strings; empty otherwise.
    [[nodiscard]] std::optional<Hookup> hookup() const;

    friend bool operator==(const BankTree&, const BankTree&) = default;
};

/// What feeds a bank: the operating point into a resistance [ohm].
using LoadedSource = std::function<OperatingPoint(double resistance_ohm)>;

/// What every element absorbs when one opens: row i has all elements with element i open, at the
/// operating point of the source into what is left.
[[nodiscard]] std::vector<std::vector<OperatingPoint>> with_each_open(const BankTree& bank,
                                                                      std::span<const double> ohm,
                                                                      const LoadedSource& source);

}  // namespace heatmatch
