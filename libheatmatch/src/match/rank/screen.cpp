#include "screen.hpp"

#include "group_screen.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"

namespace heatmatch {

GroupScreen::GroupScreen(const ScreenContext& context, std::size_t group, Tally& tally)
    : context_(context),
      group_(group),
      tally_(tally),
      panel_(panel_of(context, group)),
      load_(panel_, context.installation->site, context.options->vector_width),
      objective_(panel_, context, group),
      behind_(panel_, context),
      bill_(context),
      folding_(context, panel_),
      touch_v_(touch_limit_v(context.installation->site)) {
    for (const char* name :
         {"sheath voltage", "terminal temperature", "survivor sheath", "budget"}) {
        numbers_of_reasons_.push_back(context.reasons->number(name));
    }
}

void GroupScreen::run(HookupShare share, const Pulse& pulse) {
    const std::vector<Hookup> all = hookups_up_to(context_.installation->panels[group_].count);
    for (std::size_t i = share.first; i < all.size(); i += share.step) {
        const Hookup panels = all[i];
        if (context_.options->panels && !(panels == *context_.options->panels)) continue;
        pulse();
        if (is_above_volts(panels)) continue;
        Wiring wiring;
        for (std::size_t b = 0; b < context_.bank_hookups.size(); ++b) {
            if (b == 0 || context_.branch_runs) {
                wiring = lay(panels, context_.bank_hookups[b]);
            }
            screen_banks(wiring, context_.numbers[b]);
        }
        folding_.finish([this](const Pairing& kept) { tally_.best(kept).offer(kept); });
        tally_.left_out += context_.not_fixed;
    }
}

bool GroupScreen::is_above_volts(Hookup panels) {
    const auto& most = context_.installation->goals.volts_max;
    if (!most || panel_.cold.v_oc * panels.series <= *most) return false;
    for (const auto& banks : context_.numbers) tally_.above_volts += banks.size();
    return true;
}

Wiring GroupScreen::lay(Hookup panels, Hookup bank) {
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

std::uint32_t GroupScreen::reason_of(const Wiring& wiring, const BankNumbers& bank,
                                     double& headroom) const {
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

void GroupScreen::screen_banks(const Wiring& wiring, const std::vector<BankNumbers>& banks) {
    tally_.evaluated += banks.size();
    std::size_t count = banks.size();
    if (!tally_.rejected.may_enter(objective_.most() * wiring.panels.count())) {
        if (wiring.reason != 0) {
            tally_.count(wiring.reason, banks.size());
            return;
        }
        const auto first = std::partition_point(
            banks.begin(), banks.end(),
            [&wiring](const BankNumbers& bank) { return bank.sheath_v >= wiring.cold_voltage_v; });
        count = static_cast<std::size_t>(first - banks.begin());
        tally_.count(numbers_of_reasons_[sheath], banks.size() - count);
    }
    for (std::size_t i = 0; i < count; ++i) screen(wiring, banks[i]);
}

void GroupScreen::screen(const Wiring& wiring, const BankNumbers& bank) {
    Pairing pairing{.group = group_,
                    .bank = bank.bank,
                    .panels = wiring.panels,
                    .headroom = wiring.screened.headroom,
                    .doubtful = wiring.doubtful || wiring.cold_voltage_v > bank.careful_sheath_v,
                    .settled = wiring.settled || context_.relaxed,
                    .below_touch = wiring.cold_voltage_v <= touch_v_};
    bill_.set(pairing, wiring.run_price + bank.price);
    pairing.reason = reason_of(wiring, bank, pairing.headroom);
    if (pairing.reason != 0) {
        const bool strong = tally_.rejected.may_enter(objective_.most() * wiring.panels.count());
        if (strong) pairing.objective = objective_.of(wiring, bank);
        if (strong && context_.lays_for_heat && context_.heats[bank.bank]) {
            const Circuit& frame = circuit_at(wiring, bank.bank);
            Wiring own = wiring;
            take_wire(own, circuit_of(context_, frame, bank.bank), bank, pairing);
        }
        reject(pairing.reason, strong, pairing);
        return;
    }
    if (is_beyond_budget(pairing)) return;
    pairing.objective = objective_.at_most(wiring, bank);
    if (!has_place(pairing)) return;
    pairing.objective = objective_.of(wiring, bank);
    keep(wiring, bank, pairing);
}

bool GroupScreen::is_beyond_budget(const Pairing& pairing) {
    const bool beyond = bill_.is_beyond(pairing);
    if (beyond) tally_.count(numbers_of_reasons_[budget]);
    return beyond;
}

void GroupScreen::reject(std::uint32_t reason, bool may_be_kept, Pairing& pairing) {
    pairing.reason = reason;
    tally_.count(reason);
    const bool enters = may_be_kept && tally_.rejected.may_enter(pairing.objective);
    if (enters) tally_.rejected.offer(pairing);
}

void screen_group(const ScreenContext& context, std::size_t group, HookupShare share, Tally& tally,
                  const Pulse& pulse) {
    const std::string& only = context.options->group;
    if (!only.empty() && only != context.installation->panels[group].group) return;
    GroupScreen(context, group, tally).run(share, pulse);
}

}  // namespace heatmatch
