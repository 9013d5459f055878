#pragma once

#include "model_error.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <vector>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/match/circuit/bank_heat.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"

namespace heatmatch {

/// Logarithms of the numbers sought: conductivity at 20 °C [W/mK], and heat loss over what the
/// store's description gives.
using Sought = std::array<double, 2>;

/// A log beside what the model reads for any two numbers.
class StoreFit {
  public:
    /// Of a bank known in its store, and a checked log; the pulse is called for every row modelled.
    StoreFit(const BankHeat& heat, const StoreLog& log, Pulse pulse = {});

    [[nodiscard]] std::size_t readings() const { return measured_.size(); }
    /// What the model reads where something was read, probe by probe [°C].
    [[nodiscard]] std::vector<double> model(const Sought& sought) const;
    /// How far the model may be off where something was read.
    [[nodiscard]] ModelError model_error(const Sought& sought) const;
    /// What was read, less what the model reads [K].
    [[nodiscard]] std::vector<double> residuals(const Sought& sought) const;

  private:
    static double at(const BedField& bed, const Probe& probe);
    /// Lives through the log, and hands over the field wherever a probe was read.
    void live(const Sought& sought,
              const std::function<void(const BedField&, std::size_t probe, std::size_t row)>& visit)
        const;

    const BankHeat* heat_;
    const StoreLog* log_;
    double start_c_ = 0.0;
    std::vector<double> measured_{};
    Pulse pulse_{};
};

}  // namespace heatmatch
