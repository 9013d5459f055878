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

/// Logarithms of the fitted numbers: conductivity at 20 °C [W/mK], and heat loss over that of the
/// store's description.
using Sought = std::array<double, 2>;

/// A log, with the model's readings for any two numbers.
class StoreFit {
  public:
    /// For a bank known in its store, and a checked log; the pulse is called for every row modeled.
    StoreFit(const BankHeat& heat, const StoreLog& log, Pulse pulse = {});

    [[nodiscard]] std::size_t readings() const { return measured_.size(); }
    /// Model values at all readings, probe by probe [°C].
    [[nodiscard]] std::vector<double> model(const Sought& sought) const;
    /// Model error at all readings.
    [[nodiscard]] ModelError model_error(const Sought& sought) const;
    /// Readings minus model values [K].
    [[nodiscard]] std::vector<double> residuals(const Sought& sought) const;

  private:
    static double at(const BedField& bed, const Probe& probe);
    /// Simulates the log, and passes on the field at each reading.
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
