#pragma once

#include "screen.hpp"
#include "screen_wiring.hpp"

#include <map>
#include <vector>

namespace heatmatch {

/// Objective of a ranking for the pairings of one group: season energy, or mean power over the
/// conditions.
class GroupObjective {
  public:
    GroupObjective(const PanelInService& panel, const ScreenContext& context, std::size_t group);

    /// Of the array with the bank.
    [[nodiscard]] double of(const Wiring& wiring, const BankNumbers& bank) const;
    /// An upper bound, faster.
    [[nodiscard]] double at_most(const Wiring& wiring, const BankNumbers& bank) const;
    /// The largest of one panel, at its best resistance.
    [[nodiscard]] double most() const { return most_; }

  private:
    [[nodiscard]] CurveTable blocked(int series) const;

    bool by_season_;
    EnergyCurve energy_{};
    CurveTable table_{};
    double most_ = unknown_price;
    PanelInService panel_{};
    const WeatherNodes* nodes_ = nullptr;
    /// With a blocking diode: of each number of panels in series, made when first read.
    mutable std::map<int, EnergyCurve> blocked_{};
    std::vector<DiodeCurve> conditions_{};
};

}  // namespace heatmatch
