#pragma once

#include <optional>
#include <span>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/tail_heat.hpp"
#include "heatmatch/operation/days/day_weather.hpp"

namespace heatmatch {

/// Operating point of a circuit at one moment.
struct Flow {
    double voltage_v = 0.0;  //!< at the bank
    double current_a = 0.0;  //!< of the bank
    double power_w = 0.0;    //!< into the bank
    double wire_w = 0.0;     //!< lost in wire and joints
};

/// A circuit that follows the irradiance and its own temperature.
class CircuitNow {
  public:
    explicit CircuitNow(const Circuit& circuit);

    /// Sun and cells of a row on the plane of each group.
    void set_sun(const DayWeather& weather, std::size_t row);
    /// Resistance of the bank at those temperatures of its coils: one for equal elements, one for
    /// each unlike element.
    void set_coils_c(std::span<const double> coil_c);
    /// Points of its elements at a flow: that of all equal elements together, or one for each
    /// unlike element.
    [[nodiscard]] std::vector<OperatingPoint> elements_at(const Flow& flow) const;
    /// Resistance of the wires at that current of the array, steady.
    void set_wire_current(double current_a);
    [[nodiscard]] Flow flow() const;
    [[nodiscard]] double maximum_power_w() const { return maximum_power_w_; }
    [[nodiscard]] double bank_ohm() const { return bank_ohm_; }
    [[nodiscard]] double wire_ohm() const { return wire_ohm_; }

  private:
    void set_unlike_sun(const DayWeather& weather, std::size_t row);

    const Circuit* circuit_;
    Array array_;
    ArrayCurve curve_{};
    std::optional<MixedArray> unlike_{};
    std::optional<MixedArrayCurve> unlike_curve_{};
    double maximum_power_w_ = 0.0;
    bool dark_ = true;
    std::vector<double> factors_as_made_{};
    std::vector<double> unlike_ohm_{};
    double bank_ohm_ = 0.0;
    double wire_ohm_ = 0.0;
    std::vector<RunParts> runs_{};
};

}  // namespace heatmatch
