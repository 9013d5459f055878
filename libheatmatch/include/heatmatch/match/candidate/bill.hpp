#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// What is known of the price of a line.
enum class BillState { known, no_part, price_not_known, other_currency };
inline constexpr auto bill_state_words =
    std::to_array<std::string_view>({"known", "no part", "price not known", "other currency"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(BillState) {
    return bill_state_words;
}

/// One kind of part on a bill, in pieces, or in metres of wire.
struct BillLine {
    PartKind kind = PartKind::element;
    std::string part{};     //!< id; empty where no part of the catalog suits
    std::string label{};    //!< of the part
    double quantity = 0.0;  //!< needed for the circuit
    double owned = 0.0;     //!< how much of it is owned
    double to_buy = 0.0;    //!< the rest
    Price price{};          //!< of one piece or metre
    BillState state = BillState::known;
    Sentence why{};         //!< what it is for, and where
    bool of_store = false;  //!< serves every circuit of the store

    /// Price of what is to buy; 0 where nothing is, empty where it is not known.
    [[nodiscard]] std::optional<double> low() const;
    [[nodiscard]] std::optional<double> typical() const;
    [[nodiscard]] std::optional<double> high() const;
    /// `m` for wire, else empty.
    [[nodiscard]] const Unit& unit() const;

    friend bool operator==(const BillLine&, const BillLine&) = default;
};

/// All parts of a circuit with what is owned and what is to buy: elements, wire there and back,
/// connectors, listed devices, and devices that the margins require but no listed one replaces. A
/// total is known only if every line is: a missing part or price never counts as 0, and prices in
/// different currencies are not added.
struct Bill {
    std::vector<BillLine> lines{};
    std::string currency{};  //!< of the totals, ISO 4217; empty if no price has one
    std::optional<double> budget{};
    Sentences remarks{};  //!< listed devices that are not on it, with the reason

    [[nodiscard]] std::optional<double> low() const;
    [[nodiscard]] std::optional<double> typical() const;
    [[nodiscard]] std::optional<double> high() const;
    [[nodiscard]] bool complete() const;
    /// Whether the typical total is at most the budget; `unknown` where the total is, `yes` without
    /// a budget.
    [[nodiscard]] Answer within_budget() const;

    friend bool operator==(const Bill&, const Bill&) = default;
};

/// Lines of a bill before they are priced in one currency.
struct BillItems {
    std::vector<BillLine> lines{};
    Sentences remarks{};
};

/// Of equal elements.
[[nodiscard]] BillLine element_line(const Bank& bank);
/// One for each kind of element.
[[nodiscard]] std::vector<BillLine> element_lines(const Bank& bank);
/// Wire and connectors. A run has two conductors and a connector at each end of both; a run of
/// strings or branches is there once for each of them.
[[nodiscard]] BillItems run_items(const Circuit& circuit);
/// Wire, connectors and devices: all but the elements.
[[nodiscard]] BillItems other_items(const Circuit& circuit, const Site& site, const Parts& catalog,
                                    const Goals& goals);
/// The bill of these lines: equal parts once, in the currency of the goals if stated, else in that
/// of the first part to buy.
[[nodiscard]] Bill make_bill(BillItems items, const Goals& goals);

/// The bill of a circuit, with the cheapest controls of the catalog for devices that are needed.
[[nodiscard]] Bill bill_of(const Circuit& circuit, const Installation& installation,
                           const Parts& catalog);
/// The bills of several circuits of one store, in turn: what is owned counts for the first circuits
/// that need it, and what serves the whole store is on the first bill that has it. A listed device
/// is a piece in each circuit, unless several circuits pass through it.
[[nodiscard]] std::vector<Bill> bills_in_turn(std::span<const Circuit> circuits,
                                              const Installation& installation,
                                              const Parts& catalog);
/// The same as one bill.
[[nodiscard]] Bill joint_bill(std::span<const Circuit> circuits, const Installation& installation,
                              const Parts& catalog);

}  // namespace heatmatch
