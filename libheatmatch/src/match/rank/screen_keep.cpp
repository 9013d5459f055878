#include "group_screen.hpp"
#include "match/margins/screen_heat.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch {

void GroupScreen::keep(Wiring wiring, const BankNumbers& numbers, Pairing& pairing) {
    if (!context_.lays_for_heat) pairing.doubtful |= bank_doubtful(wiring, numbers.bank);
    if (!may_be_best(pairing) && !may_be_front(pairing)) {
        if (!may_be_recommended(pairing)) return;
        // Looked at only where it matters: it is slow for the first pairing of a bank.
        pairing.settled = is_settled(wiring, numbers.bank);
        if (!pairing.settled) return;
    }
    if (!survives_bounds(wiring, numbers, pairing)) return;
    const bool heated = context_.heats[numbers.bank] != nullptr;
    const Circuit* circuit = &circuit_at(wiring, numbers.bank);
    std::optional<Circuit> laid;
    if (heated && context_.lays_for_heat) {
        laid = circuit_of(context_, *circuit, numbers.bank);
        take_wire(wiring, *laid, numbers, pairing);
        pairing.settled = wiring.settled || context_.relaxed;
        circuit = &*laid;
    }
    bill_.take(*circuit, numbers.bank, laid.has_value(), pairing);
    if (is_beyond_budget(pairing) || !has_place(pairing)) return;
    if (!settle(wiring, numbers, *circuit, pairing)) return;
    if (may_be_recommended(pairing)) {
        pairing.settled = laid
                              ? context_.relaxed || settled_bank(*laid, context_.installation->site)
                              : is_settled(wiring, numbers.bank);
    }
    offer(numbers, pairing);
}

bool GroupScreen::survives_bounds(const Wiring& wiring, const BankNumbers& numbers,
                                  Pairing& pairing) {
    const Bank& bank = context_.banks[numbers.bank];
    // The rise of a sheath grows slightly less than in proportion: slightly more than its share
    // is a bound.
    constexpr double steeper = 1.1;
    constexpr double slack = 0.02;
    if (!std::isinf(numbers.power_w)) {
        const auto lower = [&](double watts) {
            const double by_heat = steeper * (1.0 - watts / numbers.heat_w) + slack;
            pairing.headroom = std::min({pairing.headroom, 1.0 - watts / numbers.rated_w, by_heat});
        };
        lower(load_.typical_at_least_w(wiring, numbers));
        if (!has_place(pairing)) return false;
        const double watts = load_.at_least_w(wiring, bank.each, bank.hookup);
        lower(watts);
        if (!has_place(pairing)) return false;
        if (!std::isinf(numbers.heat_w)) {
            pairing.headroom = std::min(pairing.headroom, heat_at_most(context_, numbers, watts));
            if (!has_place(pairing)) return false;
        }
    }
    if (may_be_best(pairing)) return true;
    if (!std::isinf(numbers.survivor_w)) {
        const double watts = load_.at_least_w(wiring, bank.each, bank.hookup_left());
        pairing.headroom =
            std::min(pairing.headroom, steeper * (1.0 - watts / numbers.survivor_w) + slack);
    }
    if (may_be_front(pairing) &&
        !tally_.front.beaten(pairing.objective, pairing.headroom, pairing.price)) {
        return true;
    }
    if (!may_be_recommended(pairing)) return false;
    if (context_.lays_for_heat) return true;
    pairing.settled = is_settled(wiring, numbers.bank);
    if (!pairing.settled) return false;
    bill_.raise(circuit_at(wiring, numbers.bank), numbers.price, pairing);
    return may_be_recommended(pairing);
}

bool GroupScreen::settle(const Wiring& wiring, const BankNumbers& numbers, const Circuit& circuit,
                         Pairing& pairing) {
    const Site& site = context_.installation->site;
    const Bank& bank = context_.banks[numbers.bank];
    const BankHeat* heat = context_.heats[numbers.bank].get();
    const Extremes extremes = load_.exact(wiring, bank);
    Screened by_bank =
        screen_bank(extremes, bank_limits(bank, heat), wiring.cold_voltage_v, wiring.terminal_c);
    HeatScreened by_heat;
    if (heat != nullptr) {
        by_heat = screen_heat(circuit, site, extremes);
        if (by_heat.screened.headroom < by_bank.headroom) by_bank = by_heat.screened;
    }
    if (const auto& left = context_.survivors[numbers.bank]) {
        const auto of_left = survivor_headroom(*left, extremes.survivor_power_w);
        if (of_left && *of_left < by_bank.headroom) by_bank = {*of_left, "survivor sheath"};
    }
    pairing.headroom = std::min(by_bank.headroom, wiring.screened.headroom);
    if (pairing.headroom < 0.0) {
        reject(context_.reasons->number(by_bank.reason), true, pairing);
        return false;
    }
    pairing.not_assessed =
        wiring.not_assessed + by_heat.tail_not_assessed + bank_not_assessed(wiring, numbers.bank);
    pairing.doubtful |= wiring.doubtful || extremes.element_power_w > numbers.careful_w ||
                        extremes.survivor_power_w > numbers.careful_survivor_w;
    pairing.doubtful =
        pairing.doubtful || behind_.may_be_danger(wiring, numbers, heat ? &circuit : nullptr);
    if (context_.lays_for_heat) pairing.doubtful |= doubtful_bank(circuit, site);
    return true;
}

void GroupScreen::offer(const BankNumbers& numbers, const Pairing& pairing) {
    if (may_be_best(pairing)) {
        if (context_.options->fold && context_.loads[numbers.bank].shared) {
            folding_.add(pairing);
        } else {
            tally_.best(pairing).offer(pairing);
        }
    }
    if (may_be_front(pairing)) tally_.front.offer(pairing);
    if (may_be_recommended(pairing)) tally_.shortlist.offer(pairing);
}

const Circuit& GroupScreen::circuit_at(const Wiring& wiring, std::size_t index) {
    const Bank& bank = context_.banks[index];
    if (context_.plain && !(frame_ && frame_->panels == wiring.panels)) {
        frame_ = frame_of(context_, group_, panel_, wiring.panels, bank.hookup);
    }
    frame_->bank = bank;
    frame_->heat = context_.screen_heats[index];
    return *frame_;
}

void GroupScreen::take_wire(Wiring& wiring, const Circuit& circuit, const BankNumbers& numbers,
                            Pairing& pairing) const {
    wiring = wiring_of(circuit, *context_.installation);
    pairing.price = wiring.run_price + numbers.price;
    pairing.objective = objective_.of(wiring, numbers);
}

int GroupScreen::bank_not_assessed(const Wiring& wiring, std::size_t index) {
    return context_.heat_tables[index]->lacking(wiring.terminal_c.has_value(), [&] {
        return lacking_of_bank(circuit_at(wiring, index), context_.installation->site);
    });
}

bool GroupScreen::bank_doubtful(const Wiring& wiring, std::size_t index) {
    return context_.heat_tables[index]->doubtful(wiring.terminal_c.has_value(), [&] {
        return doubtful_bank(circuit_at(wiring, index), context_.installation->site);
    });
}

bool GroupScreen::is_settled(const Wiring& wiring, std::size_t index) {
    if (context_.relaxed) return true;
    // A wire chosen for the heat is known only with that bank, and is looked at then.
    if (context_.lays_for_heat) return context_.heats[index] != nullptr;
    return context_.settled[index]->read(
        [&] { return settled_bank(circuit_at(wiring, index), context_.installation->site); });
}

}  // namespace heatmatch
