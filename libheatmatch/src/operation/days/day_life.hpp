#pragma once

#include "circuit_now.hpp"
#include "day_switches.hpp"
#include "store_model.hpp"

#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// Step-by-step simulation of a candidate over days.
class DayLife {
  public:
    DayLife(const Candidate& candidate, const DayWeather& weather, const DayOptions& options);
    [[nodiscard]] DayRun run();

  private:
    struct Electric {
        double power_w = 0.0;
        double wire_w = 0.0;
        double available_w = 0.0;
        double irradiance_w_m2 = 0.0;
        double voltage_v = 0.0;
        double current_a = 0.0;
    };
    struct Held {  //!< heat in the store and its two losses, at a moment [kWh]
        double stored = 0.0;
        double lost = 0.0;
        double taken = 0.0;
        double steam = 0.0;
    };

    void live(double hours, bool record);
    void tell(double lived_h) const;
    void advance(double from_h, double step_h, bool record);
    [[nodiscard]] Electric electric(double from_h, double step_h);
    void take_sun(std::size_t row);
    [[nodiscard]] double air_around_c(double outside_c, double step_h) const;
    void set_extraction(double hour_of_day, double outside_c);
    [[nodiscard]] double sensed_c(SensedPlace place) const;
    [[nodiscard]] double terminal_c(const Electric& now) const;
    [[nodiscard]] Held held() const;
    void finish(const Held& before);

    const Candidate* candidate_;
    const DayWeather* weather_;
    DayOptions options_;
    bool outdoors_ = false;  //!< the store is outside
    double noct_c_ = 45.0;
    CircuitNow circuit_;
    StoreModel store_;
    TailHeat tail_;
    DaySwitches switches_{};
    DayRun run_{};
    double lived_h_ = 0.0;  //!< simulated before the current stretch, warm-up included
    std::size_t row_ = 0;
    bool row_taken_ = false;
    double power_w_ = 0.0;    //!< at the last moment
    double current_a_ = 0.0;  //!< the same
    double space_c_ = 0.0;
    double without_c_ = 0.0;
    double extraction_w_k_ = 0.0;
};

}  // namespace heatmatch
