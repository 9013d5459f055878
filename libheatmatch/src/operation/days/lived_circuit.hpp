#pragma once

#include "circuit_now.hpp"
#include "day_switches.hpp"
#include "store_model.hpp"

#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// The banks of a circuit in its store: equal elements as the circuit itself, unlike elements one
/// by one.
[[nodiscard]] std::vector<Circuit> seen_in_store(const Circuit& circuit);

/// One circuit of a simulation of days: its sun, its controls and its record.
class LivedCircuit {
  public:
    /// `bank` is the first of its banks in the store: one for equal elements, one for each unlike
    /// element.
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
        std::vector<double> banks_w{};  //!< into each of its banks in the store
        std::vector<double> banks_a{};
    };
    /// Follows the weather through a step with the sheath at its temperature before it.
    [[nodiscard]] Electric electric(const StoreModel& store, double from_h, double step_h);
    /// Appends a step to its own series: what the store and the space do is common.
    void record(const Electric& now, const StoreModel& store, double step_h);
    [[nodiscard]] DaySwitches& switches() { return switches_; }
    [[nodiscard]] DayRun& run() { return run_; }

  private:
    void take_sun(std::size_t row);
    [[nodiscard]] double terminal_c(const Electric& now, const StoreModel& store,
                                    std::size_t element) const;
    [[nodiscard]] double coil_c(const StoreModel& store, std::size_t element, double power_w) const;

    /// Equal elements, or one unlike element, in the store.
    struct Lived {
        double heated_m = 0.0;
        TailHeat tail{};
    };

    const Candidate* candidate_;
    const DayWeather* weather_;
    double electrical_step_s_ = 60.0;
    std::size_t bank_ = 0;
    CircuitNow circuit_;
    std::vector<Lived> elements_{};
    DaySwitches switches_{};
    DayRun run_{};
    std::size_t row_ = 0;
    bool row_taken_ = false;
    std::vector<double> power_w_{};  //!< at the last moment, by element
    double current_a_ = 0.0;         //!< the same
};

}  // namespace heatmatch
