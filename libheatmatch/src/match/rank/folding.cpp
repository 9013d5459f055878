#include "folding.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace heatmatch {

int Folding::elements_of(const Pairing& pairing) const {
    return context_->banks[pairing.bank].hookup.count();
}

Severity Folding::worst_of(Member& member) const {
    const Pairing& pairing = member.pairing;
    if (pairing.doubtful) return Severity::danger;
    if (!member.worst) {
        const Circuit frame = frame_of(*context_, pairing.group, *panel_, pairing.panels,
                                       context_->banks[pairing.bank].hookup);
        member.worst = evaluate(circuit_of(*context_, frame, pairing.bank), *context_->installation,
                                context_->options->conditions, *context_->parts)
                           .worst_severity();
    }
    return *member.worst;
}

bool Folding::no_worse(Member& a, Member& b) const {
    constexpr double rounding = 1e-9;
    const Pairing& mine = a.pairing;
    const Pairing& other = b.pairing;
    const auto counted = [](const Pairing& p) { return std::min(p.headroom, enough_headroom); };
    // A wire of its own may leave one bank a little less heat: then it is another row.
    return objective_step(mine.objective) == objective_step(other.objective) &&
           mine.not_assessed <= other.not_assessed && counted(mine) >= counted(other) - rounding &&
           !std::isinf(mine.price) && !std::isinf(other.price) &&
           mine.price <= other.price + rounding && mine.doubtful <= other.doubtful &&
           worst_of(a) <= worst_of(b);
}

void Folding::fold() {
    std::sort(all_.begin(), all_.end(), [this](const Member& a, const Member& b) {
        const auto order = [this](const Pairing& pairing) {
            return std::tuple(context_->loads[pairing.bank].number, pairing.sequence());
        };
        return order(a.pairing) < order(b.pairing);
    });
    auto from = all_.begin();
    while (from != all_.end()) {
        const std::size_t load = context_->loads[from->pairing.bank].number;
        const auto to = std::find_if(from, all_.end(), [&](const Member& member) {
            return context_->loads[member.pairing.bank].number != load;
        });
        fold_load({from, to});
        from = to;
    }
}

void Folding::fold_load(std::span<Member> load) {
    const auto first = [this](const Pairing& a, const Pairing& b) {
        return std::tuple(elements_of(a), a.sequence()) < std::tuple(elements_of(b), b.sequence());
    };
    for (Member& member : load) {
        member.covered = std::any_of(load.begin(), load.end(), [&](Member& other) {
            if (&other == &member || !no_worse(other, member)) return false;
            // Of two that are alike the one with fewer elements stays.
            return !no_worse(member, other) || first(other.pairing, member.pairing);
        });
    }
    for (Member& member : load) {
        if (!member.covered) continue;
        Member* under = nullptr;
        for (Member& other : load) {
            if (other.covered || !no_worse(other, member)) continue;
            if (under == nullptr || comes_first(other.pairing, under->pairing)) under = &other;
        }
        if (under != nullptr) ++under->pairing.like_it;
    }
}

}  // namespace heatmatch
