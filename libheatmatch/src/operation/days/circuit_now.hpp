#pragma once

#include <optional>
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
    /// Resistance of the bank at that temperature of its coils.
    void set_coil_c(double coil_c);
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
    double factor_as_made_ = 1.0;
    double bank_ohm_ = 0.0;
    double wire_ohm_ = 0.0;
    std::vector<RunParts> runs_{};
};

}  // namespace heatmatch
