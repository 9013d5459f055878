#pragma once

#include <functional>
#include <vector>

#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/operation/days/store_switch.hpp"

namespace heatmatch {

/// The controls of a circuit over days: which are open, and their actions.
class DaySwitches {
  public:
    DaySwitches() = default;
    DaySwitches(std::vector<StoreSwitch> made, SwitchCase fault);

    /// Whether any is open.
    [[nodiscard]] bool open() const;
    /// Each control acts on its sensed temperature. An action becomes an event of the run, or a
    /// remark before the first recorded day.
    void act(const std::function<double(SensedPlace)>& sensed_c, double at_h, bool record,
             DayRun& run);

  private:
    struct State {
        StoreSwitch made{};
        bool open = false;
        bool told = false;         //!< reported that it cannot open
        bool told_before = false;  //!< reported that it acted before the first day
    };

    [[nodiscard]] bool is_stuck(const StoreSwitch& made) const;

    std::vector<State> states_{};
    SwitchCase fault_{};
};

}  // namespace heatmatch
