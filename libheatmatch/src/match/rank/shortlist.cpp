#include "shortlist.hpp"

#include <tuple>

namespace heatmatch {

namespace {

/// Whether a pairing may be that alternative at all.
bool admits(AlternativeKind kind, const Pairing& pairing) {
    if (kind == AlternativeKind::below_touch_voltage) return pairing.below_touch;
    return kind != AlternativeKind::all_owned || hundredths(pairing.price) <= 0.0;
}

}  // namespace

bool recommended_before(const Pairing& a, const Pairing& b) {
    const auto order = [](const Pairing& p) {
        return std::tuple(-recommended_step(p.headroom), hundredths(p.price), p.parts, -p.objective,
                          p.sequence());
    };
    return order(a) < order(b);
}

bool most_heat_before(const Pairing& a, const Pairing& b) {
    return a.objective != b.objective ? a.objective > b.objective : recommended_before(a, b);
}

bool least_money_before(const Pairing& a, const Pairing& b) {
    const auto order = [](const Pairing& p) {
        return std::tuple(hundredths(p.price), -p.objective, -headroom_step(p.headroom), p.parts,
                          p.sequence());
    };
    return order(a) < order(b);
}

bool coolest_before(const Pairing& a, const Pairing& b) {
    const auto order = [](const Pairing& p) {
        return std::tuple(-headroom_step(p.headroom), -p.objective, hundredths(p.price), p.parts,
                          p.sequence());
    };
    return order(a) < order(b);
}

bool Shortlist::List::may_enter(const Pairing& at_best) const {
    if (recommended.may_enter(at_best)) return true;
    for (std::size_t i = 0; i < others.size(); ++i) {
        if (admits(static_cast<AlternativeKind>(i), at_best) && others[i].may_enter(at_best)) {
            return true;
        }
    }
    return false;
}

void Shortlist::List::offer(const Pairing& pairing) {
    recommended.offer(pairing);
    for (std::size_t i = 0; i < others.size(); ++i) {
        if (admits(static_cast<AlternativeKind>(i), pairing)) others[i].offer(pairing);
    }
}

bool Shortlist::may_enter(const Pairing& at_best) const {
    if (!at_best.settled) return false;
    if (!at_best.doubtful) return clear_.may_enter(at_best);
    return clear_.recommended.empty() && doubtful_.may_enter(at_best);
}

void Shortlist::offer(const Pairing& pairing) {
    if (!pairing.settled) return;
    (pairing.doubtful ? doubtful_ : clear_).offer(pairing);
}

void Shortlist::take(const Shortlist& other) {
    const auto add = [](List& to, const List& from) {
        to.recommended.take(from.recommended);
        for (std::size_t i = 0; i < to.others.size(); ++i) to.others[i].take(from.others[i]);
    };
    add(clear_, other.clear_);
    add(doubtful_, other.doubtful_);
}

}  // namespace heatmatch
