#include "screen.hpp"

#include "group_objective.hpp"
#include "match/margins/screen_heat.hpp"
#include "screen_bill.hpp"
#include "screen_wiring.hpp"
#include "unstated_back.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch {

namespace {

/// Screen of the pairings of one group.
class GroupScreen {
  public:
    GroupScreen(const ScreenContext& context, std::size_t group, Tally& tally)
        : context_(context),
          group_(group),
          tally_(tally),
          panel_(panel_of(context, group)),
          load_(panel_, context.installation->site, context.options->vector_width),
          objective_(panel_, context, group),
          behind_(panel_, context),
          bill_(context) {
        for (const char* name :
             {"sheath voltage", "terminal temperature", "survivor sheath", "budget"}) {
            numbers_of_reasons_.push_back(context.reasons->number(name));
        }
    }

    void run(HookupShare share, const Pulse& pulse) {
        const std::vector<Hookup> all = hookups_up_to(context_.installation->panels[group_].count);
        for (std::size_t i = share.first; i < all.size(); i += share.step) {
            const Hookup panels = all[i];
            if (context_.options->panels && !(panels == *context_.options->panels)) continue;
            pulse();
            Wiring wiring;
            for (std::size_t b = 0; b < context_.bank_hookups.size(); ++b) {
                if (b == 0 || context_.branch_runs) {
                    wiring = lay(panels, context_.bank_hookups[b]);
                }
                screen_banks(wiring, context_.numbers[b]);
            }
            tally_.left_out += context_.not_fixed;
        }
    }

  private:
    enum Reason { sheath, terminal, survivor, budget };

    Wiring lay(Hookup panels, Hookup bank) {
        Wiring wiring;
        bill_.begin_wiring();
        if (context_.plain) {
            wiring = plain_wiring(panel_, panels, *context_.installation);
        } else {
            frame_ = frame_of(context_, group_, panel_, panels, bank);
            // Wire chosen for the heat of an element is not known yet: a bound without it.
            const Installation& installation = *context_.installation;
            wiring = context_.lays_for_heat ? wiring_before_element(*frame_, installation)
                                            : wiring_of(*frame_, installation);
        }
        if (wiring.screened.headroom < 0.0) {
            wiring.reason = context_.reasons->number(wiring.screened.reason);
        }
        return wiring;
    }

    /// Number of the first check that fails, 0 for none; reduces `headroom` to an upper bound.
    std::uint32_t reason_of(const Wiring& wiring, const BankNumbers& bank, double& headroom) const {
        std::uint32_t reason = wiring.reason;
        headroom = std::min(headroom, 1.0 - wiring.cold_voltage_v * bank.per_sheath_v);
        if (reason == 0 && wiring.cold_voltage_v > bank.sheath_v) {
            reason = numbers_of_reasons_[sheath];
        }
        if (wiring.terminal_c && !std::isinf(bank.terminal_c)) {
            const double limit = bank.terminal_c;
            headroom = std::min(headroom, (limit - *wiring.terminal_c) / (limit - room_c));
            if (reason == 0 && *wiring.terminal_c > limit) reason = numbers_of_reasons_[terminal];
        }
        if (reason == 0 && load_.overloads(wiring, bank, context_.banks[bank.bank])) {
            reason = bank.power_reason;
        }
        if (reason == 0 && load_.overloads_survivor(wiring, bank, context_.banks[bank.bank])) {
            reason = numbers_of_reasons_[survivor];
        }
        return reason;
    }

    /// Banks that all fail for one reason, and have too little objective to be kept among the
    /// rejected, are only counted.
    void screen_banks(const Wiring& wiring, const std::vector<BankNumbers>& banks) {
        tally_.evaluated += banks.size();
        std::size_t count = banks.size();
        if (!tally_.rejected.may_enter(objective_.most() * wiring.panels.count())) {
            if (wiring.reason != 0) {
                tally_.count(wiring.reason, banks.size());
                return;
            }
            const auto first = std::partition_point(
                banks.begin(), banks.end(), [&wiring](const BankNumbers& bank) {
                    return bank.sheath_v >= wiring.cold_voltage_v;
                });
            count = static_cast<std::size_t>(first - banks.begin());
            tally_.count(numbers_of_reasons_[sheath], banks.size() - count);
        }
        for (std::size_t i = 0; i < count; ++i) screen(wiring, banks[i]);
    }

    void screen(const Wiring& wiring, const BankNumbers& bank) {
        Pairing pairing{.group = group_,
                        .bank = bank.bank,
                        .panels = wiring.panels,
                        .headroom = wiring.screened.headroom,
                        .doubtful = wiring.doubtful};
        bill_.set(pairing, wiring.run_price + bank.price);
        pairing.reason = reason_of(wiring, bank, pairing.headroom);
        if (pairing.reason != 0) {
            const bool strong =
                tally_.rejected.may_enter(objective_.most() * wiring.panels.count());
            if (strong) pairing.objective = objective_.of(wiring, bank);
            if (strong && context_.lays_for_heat && context_.heats[bank.bank]) {
                const Circuit& frame = circuit_at(wiring, bank.bank);
                Wiring own = wiring;
                take_wire(own, circuit_of(context_, frame, bank.bank), bank, pairing);
            }
            reject(pairing.reason, strong, pairing);
        } else if (!is_beyond_budget(pairing) &&
                   may_be_kept(objective_.at_most(wiring, bank), pairing)) {
            pairing.objective = objective_.of(wiring, bank);
            keep(wiring, bank, pairing);
        }
    }

    /// Counts it if it is above the budget. A price that is not known is kept, after the others.
    bool is_beyond_budget(const Pairing& pairing) {
        const bool beyond = bill_.is_beyond(pairing);
        if (beyond) tally_.count(numbers_of_reasons_[budget]);
        return beyond;
    }

    void reject(std::uint32_t reason, bool may_be_kept, Pairing& pairing) {
        pairing.reason = reason;
        tally_.count(reason);
        const bool enters = may_be_kept && tally_.rejected.may_enter(pairing.objective);
        if (enters) tally_.rejected.offer(pairing);
    }

    [[nodiscard]] bool may_be_kept(double objective, const Pairing& pairing) const {
        return tally_.best(pairing).may_enter(objective) ||
               tally_.front.may_enter(objective, pairing.headroom, pairing.price);
    }

    /// Only pairings that may be kept get their exact headroom and number of unknowns.
    void keep(Wiring wiring, const BankNumbers& numbers, Pairing& pairing) {
        if (!context_.lays_for_heat) pairing.doubtful |= bank_doubtful(wiring, numbers.bank);
        const bool may_be_best = tally_.best(pairing).may_enter(pairing.objective);
        const auto may_be_front = [&] {
            return has_known_heat(context_, numbers.bank) && !pairing.unpriced &&
                   tally_.front.may_enter(pairing.objective, pairing.headroom, pairing.price);
        };
        if (!may_be_best && !may_be_front()) return;
        const Bank& bank = context_.banks[numbers.bank];
        // The rise of a sheath grows slightly less than in proportion: slightly more than its share
        // is a bound.
        constexpr double steeper = 1.1;
        constexpr double slack = 0.02;
        if (!std::isinf(numbers.power_w)) {
            // Each check is slower than the one before, and rejects most of the remaining pairings.
            const auto lower = [&](double watts) {
                const double by_heat = steeper * (1.0 - watts / numbers.heat_w) + slack;
                pairing.headroom =
                    std::min({pairing.headroom, 1.0 - watts / numbers.rated_w, by_heat});
            };
            lower(load_.typical_at_least_w(wiring, numbers));
            if (!may_be_best && !may_be_front()) return;
            const double watts = load_.at_least_w(wiring, bank.each, bank.hookup);
            lower(watts);
            if (!may_be_best && !may_be_front()) return;
            if (!std::isinf(numbers.heat_w)) {
                pairing.headroom =
                    std::min(pairing.headroom, heat_at_most(context_, numbers, watts));
                if (!may_be_best && !may_be_front()) return;
            }
        }
        if (!std::isinf(numbers.survivor_w) && !may_be_best) {
            const double watts = load_.at_least_w(wiring, bank.each, bank.hookup_left());
            pairing.headroom =
                std::min(pairing.headroom, steeper * (1.0 - watts / numbers.survivor_w) + slack);
            if (!may_be_front()) return;
        }
        if (!may_be_best &&
            tally_.front.beaten(pairing.objective, pairing.headroom, pairing.price)) {
            return;
        }
        const bool heated = context_.heats[numbers.bank] != nullptr;
        const Circuit* circuit = &circuit_at(wiring, numbers.bank);
        std::optional<Circuit> laid;
        if (heated && context_.lays_for_heat) {
            laid = circuit_of(context_, *circuit, numbers.bank);
            take_wire(wiring, *laid, numbers, pairing);
            circuit = &*laid;
        }
        bill_.take(*circuit, numbers.bank, laid.has_value(), pairing);
        if (is_beyond_budget(pairing) || (!may_be_best && !may_be_front())) return;
        const Extremes extremes = load_.exact(wiring, bank);
        Screened by_bank =
            screen_bank(extremes, bank_limits(bank, context_.heats[numbers.bank].get()),
                        wiring.cold_voltage_v, wiring.terminal_c);
        HeatScreened by_heat;
        if (heated) {
            by_heat = screen_heat(*circuit, context_.installation->site, extremes);
            if (by_heat.screened.headroom < by_bank.headroom) by_bank = by_heat.screened;
        }
        if (const auto& left = context_.survivors[numbers.bank]) {
            const auto of_left = survivor_headroom(*left, extremes.survivor_power_w);
            if (of_left && *of_left < by_bank.headroom) by_bank = {*of_left, "survivor sheath"};
        }
        pairing.headroom = std::min(by_bank.headroom, wiring.screened.headroom);
        if (pairing.headroom < 0.0) {
            reject(context_.reasons->number(by_bank.reason), true, pairing);
            return;
        }
        pairing.not_assessed = wiring.not_assessed + by_heat.tail_not_assessed +
                               bank_not_assessed(wiring, numbers.bank);
        pairing.doubtful |= wiring.doubtful || extremes.element_power_w > numbers.careful_w ||
                            wiring.cold_voltage_v > numbers.careful_sheath_v ||
                            extremes.survivor_power_w > numbers.careful_survivor_w;
        pairing.doubtful =
            pairing.doubtful || behind_.may_be_danger(wiring, numbers, heated ? circuit : nullptr);
        if (context_.lays_for_heat) {
            pairing.doubtful |= doubtful_bank(*circuit, context_.installation->site);
        }
        if (may_be_best) tally_.best(pairing).offer(pairing);
        if (may_be_front()) tally_.front.offer(pairing);
    }

    /// The present wiring with a bank in its store.
    const Circuit& circuit_at(const Wiring& wiring, std::size_t index) {
        const Bank& bank = context_.banks[index];
        if (context_.plain && !(frame_ && frame_->panels == wiring.panels)) {
            frame_ = frame_of(context_, group_, panel_, wiring.panels, bank.hookup);
        }
        frame_->bank = bank;
        frame_->heat = context_.screen_heats[index];
        return *frame_;
    }

    /// Uses the wire chosen for the heat of that bank, and its price.
    void take_wire(Wiring& wiring, const Circuit& circuit, const BankNumbers& numbers,
                   Pairing& pairing) const {
        wiring = wiring_of(circuit, *context_.installation);
        pairing.price = wiring.run_price + numbers.price;
        pairing.objective = objective_.of(wiring, numbers);
    }

    /// Number of margins of bank and store that lack data; independent of the operating point.
    int bank_not_assessed(const Wiring& wiring, std::size_t index) {
        return context_.heat_tables[index]->lacking(wiring.terminal_c.has_value(), [&] {
            return lacking_of_bank(circuit_at(wiring, index), context_.installation->site);
        });
    }

    /// Whether an unstated fact may make the bank a danger at any power.
    bool bank_doubtful(const Wiring& wiring, std::size_t index) {
        return context_.heat_tables[index]->doubtful(wiring.terminal_c.has_value(), [&] {
            return doubtful_bank(circuit_at(wiring, index), context_.installation->site);
        });
    }

    const ScreenContext& context_;
    std::size_t group_;
    Tally& tally_;
    PanelInService panel_;
    ElementLoad load_;
    GroupObjective objective_;
    UnstatedBack behind_;
    ScreenBill bill_;
    std::vector<std::uint32_t> numbers_of_reasons_{};
    std::optional<Circuit> frame_{};  //!< of the present wiring
};

}  // namespace

void screen_group(const ScreenContext& context, std::size_t group, HookupShare share, Tally& tally,
                  const Pulse& pulse) {
    const std::string& only = context.options->group;
    if (!only.empty() && only != context.installation->panels[group].group) return;
    GroupScreen(context, group, tally).run(share, pulse);
}

}  // namespace heatmatch
