#pragma once

#include "pairing.hpp"
#include "screen.hpp"

#include <cmath>
#include <optional>
#include <utility>

#include "heatmatch/match/candidate/bill.hpp"

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
    /// chosen for this bank.
    void take(const Circuit& circuit, std::size_t bank, bool own_wire, Pairing& pairing) {
        const Installation& installation = *context_.installation;
        if (!others_ || own_wire) {
            others_ = other_items(circuit, installation.site, *context_.parts, installation.goals);
        }
        BillItems items = *others_;
        items.lines.insert(items.lines.begin(), element_line(context_.banks[bank]));
        const Bill bill = make_bill(std::move(items), installation.goals);
        set(pairing, bill.typical().value_or(unknown_price));
    }

  private:
    const ScreenContext& context_;
    bool has_budget_;
    double budget_;
    std::optional<BillItems> others_{};
};

}  // namespace heatmatch
