#pragma once

#include <algorithm>
#include <cmath>

#include "heatmatch/match/limits.hpp"
#include "heatmatch/solar/energy_curve.hpp"

namespace heatmatch {

/// A bank as the screen sees it.
struct BankNumbers {
    std::size_t bank = 0;
    double typical_ohm = 0.0;
    double ln_typical = 0.0;
    double low_ohm = 0.0;
    double high_ohm = 0.0;
    double ln_low = 0.0;
    double ln_high = 0.0;
    double per_count = 1.0;      //!< share of one of equal elements
    double largest_share = 1.0;  //!< of the bank's power that one element can take
    double price = 0.0;          //!< of the elements to buy; infinite if unknown
    BankLimits limits{};
};

/// An array behind its wire, as a bank sees it.
struct ArrayNumbers {
    Hookup panels{};
    double ln_factor = 0.0;  //!< ln of S/P
    double wire_ohm = 0.0;

    /// ln of what one panel sees of a bank.
    [[nodiscard]] double ln_each(double bank_ohm, double ln_bank) const {
        return (wire_ohm > 0.0 ? std::log(bank_ohm + wire_ohm) : ln_bank) - ln_factor;
    }
};

/// What one element takes in bright cold: looked up in a table of one panel's power, to 1e-3, so
/// that the exact extremes are needed near the limit only.
class ElementLoad {
  public:
    ElementLoad(const PanelInService& panel, const Site& site, VectorWidth width);

    /// Whether the worst of the elements' ohms overloads one. Bounds first, for they cost little.
    [[nodiscard]] bool overloads(const ArrayNumbers& array, const BankNumbers& numbers,
                                 const Bank& bank) const {
        const double limit = *numbers.limits.element_power_w;
        const double all = bright_most_w_ * array.panels.count() * numbers.largest_share;
        if (all < limit) return false;
        return near_overloads(array, numbers, bank, limit);
    }

    /// No more than what one of equal elements of typical ohms takes [W].
    [[nodiscard]] double typical_at_least_w(const ArrayNumbers& array,
                                            const BankNumbers& numbers) const;
    /// No more than the worst that an element takes, of several ends of the ohms [W].
    [[nodiscard]] double at_least_w(const ArrayNumbers& array, const Bank& bank) const;
    [[nodiscard]] Extremes exact(const ArrayNumbers& array, const Bank& bank) const;

  private:
    [[nodiscard]] bool near_overloads(const ArrayNumbers& array, const BankNumbers& numbers,
                                      const Bank& bank, double limit) const;
    /// No less than what the bank can be given within its band of ohms [W].
    [[nodiscard]] double most_w(const ArrayNumbers& array, const BankNumbers& numbers) const;
    /// No less than what one of equal elements is given within the band [W].
    [[nodiscard]] double equal_most_w(const ArrayNumbers& array, const BankNumbers& numbers) const;

    const PanelInService* panel_;
    const Site* site_;
    EnergyCurve bright_{};  //!< kWh over 1000 h: watts
    CurveTable table_{};    //!< of it
    double ln_best_ = 0.0;
    double bright_most_w_ = 0.0;
};

}  // namespace heatmatch
