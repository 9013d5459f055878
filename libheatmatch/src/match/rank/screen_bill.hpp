#pragma once

#include "pairing.hpp"
#include "screen.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

/// Whole bills of the pairings of one wiring, against the budget. What is beside the elements is
/// the same for all banks of a wiring and is listed once.
class ScreenBill {
  public:
    explicit ScreenBill(const ScreenContext& context)
        : context_(context),
          has_budget_(context.installation->goals.budget.has_value()),
          budget_(context.installation->goals.budget.value_or(unknown_price)) {}

    void begin_wiring() { others_.reset(); }

    /// Raises the price of a pairing, a lower bound, by what its wiring needs beside wire.
    void raise(const Circuit& circuit, double elements_price, Pairing& pairing) {
        if (!others_) list_others(circuit);
        constexpr double rounding = 1.0 - 1e-12;
        set(pairing, std::max(pairing.price, rounding * (others_price_ + elements_price)));
    }

    /// Whether a known price is above the budget.
    [[nodiscard]] bool is_beyond(const Pairing& pairing) const {
        return has_budget_ && !std::isinf(pairing.price) && pairing.price > budget_;
    }
    /// Sets a price, the whole one or a lower bound.
    void set(Pairing& pairing, double price) const {
        pairing.price = price;
        pairing.unpriced = has_budget_ && std::isinf(price);
    }
    /// Sets the price of the whole bill of a circuit with that bank; `own_wire`: its wire was
    /// chosen for this bank. Also the number of pieces on it.
    void take(const Circuit& circuit, std::size_t bank, bool own_wire, Pairing& pairing) {
        if (!others_ || own_wire) list_others(circuit);
        BillItems items = *others_;
        items.lines.insert(items.lines.begin(), element_line(context_.banks[bank]));
        const Bill bill = make_bill(std::move(items), context_.installation->goals);
        set(pairing, bill.typical().value_or(unknown_price));
        pairing.parts = pieces_of(bill);
    }

  private:
    void list_others(const Circuit& circuit) {
        const Installation& installation = *context_.installation;
        others_ = other_items(circuit, installation.site, *context_.parts, installation.goals);
        others_price_ = make_bill(*others_, installation.goals).typical().value_or(unknown_price);
    }

    const ScreenContext& context_;
    bool has_budget_;
    double budget_;
    std::optional<BillItems> others_{};
    double others_price_ = 0.0;
};

}  // namespace heatmatch
