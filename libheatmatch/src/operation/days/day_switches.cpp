#include "day_switches.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

using days_sentences::say;

namespace {

Sentence acts(SwitchAction what) {
    if (what == SwitchAction::opens) return say<"days.opens">();
    return what == SwitchAction::closes ? say<"days.closes">() : say<"days.cannot_open">();
}

}  // namespace

DaySwitches::DaySwitches(std::vector<StoreSwitch> made, SwitchCase fault) : fault_(fault) {
    for (StoreSwitch& each : made) states_.push_back({.made = std::move(each)});
}

bool DaySwitches::open() const {
    return std::any_of(states_.begin(), states_.end(),
                       [](const State& state) { return state.open; });
}

bool DaySwitches::is_stuck(const StoreSwitch& made) const {
    if (fault_ == SwitchCase::breaker_welded || !made.can_break) return true;
    return fault_ == SwitchCase::thermostat_welded && made.resets;
}

void DaySwitches::act(const std::function<double(SensedPlace)>& sensed_c, double at_h, bool record,
                      DayRun& run) {
    for (State& state : states_) {
        const double at_c = sensed_c(state.made.senses);
        const auto tell = [&](SwitchAction what) {
            if (record) run.events.push_back({at_h, state.made.device, what});
            if (!record && !state.told_before) {
                run.remarks.push_back(say<"days.acted_before">(with<"device">(state.made.device),
                                                               with<"what">(acts(what))));
                state.told_before = true;
            }
        };
        if (!state.open && at_c >= state.made.opens_c) {
            if (is_stuck(state.made)) {
                if (!state.told) tell(SwitchAction::cannot_open);
                state.told = state.told || record;
                continue;
            }
            state.open = true;
            tell(SwitchAction::opens);
        } else if (state.open && state.made.resets && at_c <= state.made.closes_c) {
            state.open = false;
            tell(SwitchAction::closes);
        }
    }
}

}  // namespace heatmatch
