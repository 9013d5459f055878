#pragma once

#include <optional>
#include <vector>

#include "heatmatch/heat/element_resistance.hpp"
#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/parts/alloy.hpp"
#include "heatmatch/parts/element.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/parts/sheath.hpp"

namespace heatmatch {

/// Equal elements in series and parallel.
struct Bank {
    Element element{};
    std::optional<Alloy> alloy{};
    std::optional<Sheath> sheath{};
    Hookup hookup{};
    int owned = 0;                      //!< how many of them are owned
    double coil_temperature_c = 300.0;  //!< temperature at which `each` holds [°C]
    ElementResistance each{};

    [[nodiscard]] double low_ohm() const { return each.low_ohm * hookup.resistance_factor(); }
    [[nodiscard]] double typical_ohm() const {
        return each.typical_ohm * hookup.resistance_factor();
    }
    [[nodiscard]] double high_ohm() const { return each.high_ohm * hookup.resistance_factor(); }
    /// The hook-up that remains of several branches after one has opened.
    [[nodiscard]] Hookup hookup_left() const {
        return {.series = hookup.series, .parallel = hookup.parallel - 1};
    }
    /// Resistance after one parallel branch has opened, from `ohm`, the bank's value. Infinite for
    /// one branch.
    [[nodiscard]] double with_one_branch_open(double ohm) const;

    friend bool operator==(const Bank&, const Bank&) = default;
};

/// The bank of that element and hook-up, with its resistance at the coil temperature.
[[nodiscard]] Bank make_bank(const Parts& parts, const Element& element, Hookup hookup, int owned,
                             double coil_temperature_c);

}  // namespace heatmatch
