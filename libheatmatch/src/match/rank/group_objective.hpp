#pragma once

#include "screen.hpp"
#include "screen_wiring.hpp"

#include <vector>

namespace heatmatch {

/// Objective of a ranking for the pairings of one group: season energy, or mean power over the
/// conditions.
class GroupObjective {
  public:
    GroupObjective(const PanelInService& panel, const ScreenContext& context);

    /// Of the array with the bank.
    [[nodiscard]] double of(const Wiring& wiring, const BankNumbers& bank) const;
    /// An upper bound, faster.
    [[nodiscard]] double at_most(const Wiring& wiring, const BankNumbers& bank) const;
    /// The largest of one panel, at its best resistance.
    [[nodiscard]] double most() const { return most_; }

  private:
    bool by_season_;
    EnergyCurve energy_{};
    CurveTable table_{};
    double most_ = unknown_price;
    std::vector<DiodeCurve> conditions_{};
};

}  // namespace heatmatch
