#pragma once

#include "lived_circuit.hpp"
#include "store_model.hpp"

#include <optional>
#include <span>
#include <vector>

#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// Step-by-step simulation of the circuits of one store over days.
class DayLife {
  public:
    /// One weather for all circuits, or one for each, with equal times and air.
    DayLife(std::span<const Candidate* const> candidates, std::span<const DayWeather> weathers,
            const DayOptions& options);
    [[nodiscard]] std::vector<DayRun> runs();

  private:
    struct Held {  //!< heat in the store and its two losses, at a moment [kWh]
        double stored = 0.0;
        double lost = 0.0;
        double taken = 0.0;
        double steam = 0.0;
    };

    void live(double hours, bool record);
    void tell(double lived_h) const;
    void advance(double from_h, double step_h, bool record);
    [[nodiscard]] double air_around_c(double outside_c, double step_h) const;
    void set_extraction(double hour_of_day, double outside_c);
    [[nodiscard]] double sensed_c(SensedPlace place) const;
    [[nodiscard]] Held held() const;
    void finish(const Held& before);

    const DayWeather* weather_;  //!< with the air, the same for all circuits
    DayOptions options_;
    bool outdoors_ = false;  //!< the store is outside
    bool heats_space_ = false;
    std::optional<SpaceBalance> space_{};
    StoreModel store_;
    std::vector<LivedCircuit> circuits_{};
    double lived_h_ = 0.0;  //!< simulated before the current stretch, warm-up included
    double space_c_ = 0.0;
    double without_c_ = 0.0;
    double extraction_w_k_ = 0.0;
};

}  // namespace heatmatch
