#include "heatmatch/match/circuit/bank.hpp"

#include <limits>

namespace heatmatch {

double Bank::with_one_branch_open(double ohm) const {
    if (hookup.parallel <= 1) return std::numeric_limits<double>::infinity();
    return ohm * hookup.parallel / (hookup.parallel - 1);
}

Bank make_bank(const Parts& parts, const Element& element, Hookup hookup, int owned,
               double coil_temperature_c) {
    Bank bank{.element = element,
              .hookup = hookup,
              .owned = owned,
              .coil_temperature_c = coil_temperature_c};
    if (!element.alloy.empty()) bank.alloy = find_alloy(parts, element.alloy);
    if (!element.sheath.empty()) bank.sheath = find_sheath(parts, element.sheath);
    bank.each =
        element_resistance(element, bank.alloy ? &*bank.alloy : nullptr, coil_temperature_c);
    return bank;
}

}  // namespace heatmatch
