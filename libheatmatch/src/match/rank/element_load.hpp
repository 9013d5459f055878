#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/solar/energy_curve.hpp"

namespace heatmatch {

/// Numbers of a bank for the screen, most frequently used first; unknown limits are infinite.
struct BankNumbers {
    double ln_typical = 0.0;
    double typical_ohm = 0.0;
    double sheath_v = 0.0;           //!< limit of its sheath [V]
    double per_sheath_v = 0.0;       //!< reciprocal of sheath_v
    double share_per_power_w = 0.0;  //!< largest share of the bank's power in one element, over the
                                     //!< limit of one element [1/W]
    double price = 0.0;              //!< of the elements to buy; infinite if unknown
    double terminal_c = 0.0;         //!< of its terminals [°C]
    std::size_t bank = 0;

    double power_w = 0.0;            //!< limit of one element, by its rating and by its heat [W]
    double rated_w = 0.0;            //!< limit by its rating alone [W]
    double heat_w = 0.0;             //!< limit by its heat in the store alone [W]
    double careful_w = 0.0;          //!< the same with unstated facts at their careful ends [W]
    double careful_sheath_v = 0.0;   //!< sheath_v if its rated voltage is DC [V]
    std::uint32_t power_reason = 0;  //!< number of the margin that fails above power_w
    double low_ohm = 0.0;
    double high_ohm = 0.0;
    double ln_low = 0.0;
    double ln_high = 0.0;
    double per_count = 1.0;  //!< share of one of equal elements
    double largest_share = 1.0;
    /// Limit of the sheath of one remaining element after a branch has opened; infinite for one
    /// branch.
    double survivor_w = std::numeric_limits<double>::infinity();
    double careful_survivor_w = std::numeric_limits<double>::infinity();  //!< as careful_w
    double share_per_survivor_w = 0.0;  //!< as share_per_power_w, for the remaining elements
};

/// Largest share of one of `count` equal things if it has the resistance `high` and the others
/// `low`.
[[nodiscard]] inline double largest_part(int count, double low, double high) {
    return high / (high + (count - 1) * low);
}

/// Numbers of an array behind its wire, for a bank.
struct ArrayNumbers {
    Hookup panels{};
    double ln_factor = 0.0;  //!< ln of S/P
    double wire_ohm = 0.0;
    double cold_wire_ohm = 0.0;  //!< at the lowest temperature: largest power of an element

    /// ln of the load resistance of one panel with that bank.
    [[nodiscard]] double ln_each(double bank_ohm, double ln_bank) const {
        return ln_through(wire_ohm, bank_ohm, ln_bank);
    }
    /// The same while the wire is cold.
    [[nodiscard]] double cold_ln_each(double bank_ohm, double ln_bank) const {
        return ln_through(cold_wire_ohm, bank_ohm, ln_bank);
    }

  private:
    [[nodiscard]] double ln_through(double wire, double bank_ohm, double ln_bank) const {
        return (wire > 0.0 ? std::log(bank_ohm + wire) : ln_bank) - ln_factor;
    }
};

/// Power of one element in cold, bright weather, from a table of one panel's power with an error of
/// 1e-3, so that the exact extremes are needed only near the limit.
class ElementLoad {
  public:
    ElementLoad(const PanelInService& panel, const Site& site, VectorWidth width);

    /// Whether the worst resistances of the elements overload one. Bounds come first, because they
    /// are fast.
    [[nodiscard]] bool overloads(const ArrayNumbers& array, const BankNumbers& numbers,
                                 const Bank& bank) const {
        if (bright_most_w_ * array.panels.count() * numbers.share_per_power_w < 1.0) return false;
        return near_overloads(array, numbers, bank.each, bank.hookup);
    }
    /// The same for the sheath of a remaining element after a branch has opened.
    [[nodiscard]] bool overloads_survivor(const ArrayNumbers& array, const BankNumbers& numbers,
                                          const Bank& bank) const {
        if (bright_most_w_ * array.panels.count() * numbers.share_per_survivor_w < 1.0)
            return false;
        return near_overloads_survivor(array, numbers, bank);
    }

    /// A lower bound of the power of one of equal elements with typical resistance [W].
    [[nodiscard]] double typical_at_least_w(const ArrayNumbers& array,
                                            const BankNumbers& numbers) const;
    /// A lower bound of the worst power of an element, from several ends of the resistance [W].
    [[nodiscard]] double at_least_w(const ArrayNumbers& array, const ElementResistance& each,
                                    Hookup hookup) const;
    [[nodiscard]] Extremes exact(const ArrayNumbers& array, const Bank& bank) const;

  private:
    [[nodiscard]] bool near_overloads(const ArrayNumbers& array, const BankNumbers& numbers,
                                      const ElementResistance& each, Hookup hookup) const;
    [[nodiscard]] bool near_overloads_survivor(const ArrayNumbers& array,
                                               const BankNumbers& numbers, const Bank& bank) const;
    [[nodiscard]] double exact_w(const ArrayNumbers& array, const ElementResistance& each,
                                 Hookup hookup) const;
    /// The largest power of one element over steps of its own resistance, others at either end [W].
    [[nodiscard]] double sampled_w(const ArrayNumbers& array, const ElementResistance& each,
                                   Hookup hookup, int parts) const;
    /// An upper bound of the power of the bank within its band of resistance [W].
    [[nodiscard]] double most_w(const ArrayNumbers& array, const BankNumbers& numbers) const;

    const PanelInService* panel_;
    const Site* site_;
    EnergyCurve bright_{};  //!< kWh over 1000 h: watts
    CurveTable table_{};    //!< of it
    double ln_best_ = 0.0;
    double bright_most_w_ = 0.0;
};

}  // namespace heatmatch
