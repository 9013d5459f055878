#pragma once

#include "circuit_now.hpp"
#include "day_switches.hpp"
#include "store_model.hpp"

#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// One circuit of a simulation of days: its sun, its controls and its record.
class LivedCircuit {
  public:
    LivedCircuit(const Candidate& candidate, const DayWeather& weather, const DayOptions& options,
                 std::size_t bank);

    /// Means of a step.
    struct Electric {
        double power_w = 0.0;
        double wire_w = 0.0;
        double available_w = 0.0;
        double irradiance_w_m2 = 0.0;
        double voltage_v = 0.0;
        double current_a = 0.0;
    };
    /// Follows the weather through a step with the sheath at its temperature before it.
    [[nodiscard]] Electric electric(const StoreModel& store, double from_h, double step_h);
    /// Appends a step to its own series: what the store and the space do is common.
    void record(const Electric& now, const StoreModel& store, double step_h);
    [[nodiscard]] DaySwitches& switches() { return switches_; }
    [[nodiscard]] DayRun& run() { return run_; }

  private:
    void take_sun(std::size_t row);
    [[nodiscard]] double terminal_c(const Electric& now, const StoreModel& store) const;

    const Candidate* candidate_;
    const DayWeather* weather_;
    double electrical_step_s_ = 60.0;
    std::size_t bank_ = 0;
    CircuitNow circuit_;
    TailHeat tail_;
    DaySwitches switches_{};
    DayRun run_{};
    std::size_t row_ = 0;
    bool row_taken_ = false;
    double power_w_ = 0.0;    //!< at the last moment
    double current_a_ = 0.0;  //!< the same
};

}  // namespace heatmatch
