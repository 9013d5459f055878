#include "sentences.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <utility>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"

namespace heatmatch {

namespace {

/// Power of one element at which `excess(watts)` crosses 0; it increases with power.
template <class Excess>
double watts_at_limit(const Excess& excess, double first_w) {
    if (excess(0.0) >= 0.0) return 0.0;
    double low = 0.0;
    double high = first_w;
    constexpr double most_w = 1e6;
    while (excess(high) < 0.0) {
        low = high;
        high *= 2.0;
        if (high > most_w) return most_w;
    }
    std::uintmax_t steps = 100;
    return boost::math::tools::toms748_solve(excess, low, high,
                                             boost::math::tools::eps_tolerance<double>(44), steps)
        .first;
}

}  // namespace

void BankHeat::need_equal() const {
    if (!unlike) return;
    throw InvalidInput(ErrorDetail{.part = "circuit",
                                   .field = "elements",
                                   .value = std::to_string(elements) + " unlike elements",
                                   .allowed = "equal elements",
                                   .remedy = circuit_sentences::say<"circuit.unlike_elements">()});
}

std::optional<double> BankHeat::largest_element_w(bool with_stagnation) const {
    need_equal();
    if (!misfit.empty()) return 0.0;
    if (!missing.empty() || (!sheath && !coil_limit_c)) return std::nullopt;
    const auto excess = [&](double element_w) {
        const Judged judged = judged_at(element_w);
        double most = -std::numeric_limits<double>::infinity();
        if (sheath) {
            most = judged.sheath_c - sheath->verdict_limit_c;
            if (with_stagnation) {
                most = std::max(most, judged.stagnation_sheath_c - sheath->verdict_limit_c);
            }
        }
        if (coil_limit_c) most = std::max(most, judged.coil_c - *coil_limit_c);
        return most;
    };
    return watts_at_limit(excess, 100.0 * heated_length_m / elements);
}

std::optional<double> BankHeat::largest_lasting_w() const {
    need_equal();
    if (!misfit.empty()) return 0.0;
    if (!missing.empty() || !sheath) return std::nullopt;
    const auto excess = [this](double element_w) {
        return judged_at(element_w).sheath_c - sheath->hard_limit_c;
    };
    return watts_at_limit(excess, 100.0 * heated_length_m / elements);
}

namespace {

/// Every charge of a heat.
std::vector<BedCharge*> charges_of(BankHeat& heat) {
    std::vector<BedCharge*> all{&heat.careful,  &heat.likely,          &heat.conducting,
                                &heat.stagnant, &heat.stagnant_likely, &heat.stagnant_out};
    for (auto* charge : {&heat.moist, &heat.moist_careful, &heat.moist_stagnant}) {
        if (*charge) all.push_back(&**charge);
    }
    return all;
}

}  // namespace

BankHeat BankHeat::without_others() const {
    BankHeat alone = *this;
    if (!store || store->others.empty()) return alone;
    // Other elements of the same bank have power whenever this one has.
    const auto keep_own = [this](auto& list) {
        std::size_t kept = 0;
        for (std::size_t i = 0; i < list.size(); ++i) {
            if (store->others[i].own) list[kept++] = list[i];
        }
        list.resize(kept);
    };
    for (BedCharge* charge : charges_of(alone)) {
        keep_own(charge->others);
        charge->moments.clear();
    }
    auto filled = std::make_shared<FilledStore>(*store);
    filled->place = static_cast<std::size_t>(std::count_if(
        store->others.begin(), store->others.begin() + static_cast<std::ptrdiff_t>(store->place),
        [](const OtherBank& other) { return other.own; }));
    keep_own(filled->others);
    alone.store = std::move(filled);
    return alone;
}

BankHeat BankHeat::with_others_at(double share) const {
    BankHeat less = *this;
    if (!store) return less;
    auto filled = std::make_shared<FilledStore>(*store);
    for (std::size_t i = 0; i < filled->others.size(); ++i) {
        OtherBank& other = filled->others[i];
        if (other.own) continue;
        other.element_w *= share;
        for (BedCharge* charge : charges_of(less)) {
            if (i < charge->others.size()) charge->others[i].power_w *= share;
        }
    }
    less.store = std::move(filled);
    return less;
}

}  // namespace heatmatch
