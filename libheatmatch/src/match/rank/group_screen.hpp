#pragma once

#include "folding.hpp"
#include "group_objective.hpp"
#include "screen.hpp"
#include "screen_bill.hpp"
#include "screen_wiring.hpp"
#include "unstated_back.hpp"

#include <optional>
#include <vector>

namespace heatmatch {

/// Screen of the pairings of one group.
class GroupScreen {
  public:
    GroupScreen(const ScreenContext& context, std::size_t group, Tally& tally);
    void run(HookupShare share, const Pulse& pulse);

  private:
    enum Reason { sheath, terminal, survivor, budget };

    /// Counts the pairings of a hook-up above the voltage of the goals: they are left out.
    [[nodiscard]] bool is_above_volts(Hookup panels);
    [[nodiscard]] Wiring lay(Hookup panels, Hookup bank);
    /// Number of the first check that fails, 0 for none; reduces `headroom` to an upper bound.
    [[nodiscard]] std::uint32_t reason_of(const Wiring& wiring, const BankNumbers& bank,
                                          double& headroom) const;
    /// Banks that all fail for one reason, and have too little objective to be kept among the
    /// rejected, are only counted.
    void screen_banks(const Wiring& wiring, const std::vector<BankNumbers>& banks);
    void screen(const Wiring& wiring, const BankNumbers& bank);
    /// Counts it if it is above the budget. A price that is not known is kept, after the others.
    [[nodiscard]] bool is_beyond_budget(const Pairing& pairing);
    void reject(std::uint32_t reason, bool may_be_kept, Pairing& pairing);

    /// Only pairings that may be kept get their exact headroom and number of unknowns.
    void keep(Wiring wiring, const BankNumbers& numbers, Pairing& pairing);
    /// Whether its numbers at best still leave it a place. Each check is slower than the one
    /// before, and rejects most of the remaining pairings.
    [[nodiscard]] bool survives_bounds(const Wiring& wiring, const BankNumbers& numbers,
                                       Pairing& pairing);
    /// Exact headroom, by bank and heat; false where it is a danger, which is then counted.
    [[nodiscard]] bool settle(const Wiring& wiring, const BankNumbers& numbers,
                              const Circuit& circuit, Pairing& pairing);
    void offer(const BankNumbers& numbers, const Pairing& pairing);

    /// Places that a pairing may still get with its numbers at best.
    [[nodiscard]] bool may_be_best(const Pairing& pairing) const {
        return tally_.best(pairing).may_enter(pairing.objective);
    }
    [[nodiscard]] bool may_be_front(const Pairing& pairing) const {
        return has_known_heat(context_, pairing.bank) && !pairing.unpriced &&
               tally_.front.may_enter(pairing.objective, pairing.headroom, pairing.price);
    }
    [[nodiscard]] bool may_be_recommended(const Pairing& pairing) const {
        const bool priced = context_.relaxed || !std::isinf(pairing.price);
        return pairing.settled && priced && tally_.shortlist.may_enter(pairing);
    }
    [[nodiscard]] bool has_place(const Pairing& pairing) const {
        return may_be_best(pairing) || may_be_front(pairing) || may_be_recommended(pairing);
    }

    /// The present wiring with a bank in its store.
    [[nodiscard]] const Circuit& circuit_at(const Wiring& wiring, std::size_t index);
    /// Uses the wire chosen for the heat of that bank, and its price.
    void take_wire(Wiring& wiring, const Circuit& circuit, const BankNumbers& numbers,
                   Pairing& pairing) const;
    /// Number of margins of bank and store that lack data; independent of the operating point.
    [[nodiscard]] int bank_not_assessed(const Wiring& wiring, std::size_t index);
    /// Whether an unstated fact may make the bank a danger at any power.
    [[nodiscard]] bool bank_doubtful(const Wiring& wiring, std::size_t index);
    /// Whether every margin that decides a recommendation is assessed.
    [[nodiscard]] bool is_settled(const Wiring& wiring, std::size_t index);

    const ScreenContext& context_;
    std::size_t group_;
    Tally& tally_;
    PanelInService panel_;
    ElementLoad load_;
    GroupObjective objective_;
    UnstatedBack behind_;
    ScreenBill bill_;
    Folding folding_;
    double touch_v_;
    std::vector<std::uint32_t> numbers_of_reasons_{};
    std::optional<Circuit> frame_{};  //!< of the present wiring
};

}  // namespace heatmatch
