#include "heatmatch/match/margins/sensor_margins.hpp"

#include "sentences_of_limits.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace heatmatch {

using margins_sentences::of_limits::say;

namespace {

/// Controls of these families have their whole body at the sensed place; all others have a probe
/// there, which withstands the highest set point. Common practice, no source.
bool body_senses(const Control& control) {
    constexpr auto whole =
        std::to_array<std::string_view>({"snap disc", "surface thermostat", "thermal link"});
    return std::find(whole.begin(), whole.end(), control.family) != whole.end();
}

std::optional<double> place_c(const Circuit& circuit, SensedPlace place, const HeatPoint& point) {
    if (place == SensedPlace::wall) return point.wall_c;
    if (place == SensedPlace::lid) return point.lid_c;
    if (place == SensedPlace::bed) return point.bed_mean_c;
    return circuit.heat->store->air_c;
}

/// Temperature of the sensed place; where that may be any place, of the hottest.
std::optional<double> sensed_c(const Circuit& circuit, const PlacedDevice& placed,
                               const HeatPoint& point) {
    if (!placed.anywhere) {
        return place_c(circuit, placed.device.senses.value_or(SensedPlace::wall), point);
    }
    std::optional<double> hottest;
    for (SensedPlace place : {SensedPlace::wall, SensedPlace::lid, SensedPlace::bed}) {
        const std::optional<double> there_c = place_c(circuit, place, point);
        if (there_c) hottest = std::max(hottest.value_or(*there_c), *there_c);
    }
    return hottest;
}

/// A sensing body or probe has the temperature of the sensed place.
Margin sensed_body_margin(const Circuit& circuit, const PlacedDevice& placed,
                          const std::optional<HeatPoint>& point) {
    const bool body = body_senses(placed.control);
    const bool only_senses = placed.device.duty == Duty::senses_only;
    Margin margin{.name = "device temperature",
                  .subject = std::string(only_senses ? "" : "sensor of ") + "device \"" +
                             placed.control.id + '"',
                  .consequence = Severity::warning,
                  .limit = body ? placed.control.own_limit_c : placed.control.sense_high_c,
                  .unit = unit::celsius,
                  .said = body ? say<"limit.body">() : say<"limit.probe">(),
                  .source = placed.control.provenance.source};
    if (point) {
        margin.value = sensed_c(circuit, placed, *point);
    }
    if (!margin.value || !margin.limit) {
        margin.said = say<"limit.body_unknown">();
        margin.missing = margin.value
                             ? std::vector<std::string>{body ? "own_limit_c" : "sense_high_c"}
                             : BankHeat::lacks(circuit.heat.get());
    }
    grade(margin, room_c);
    return margin;
}

}  // namespace

std::vector<Margin> sensor_margins(const Circuit& circuit, const std::optional<HeatPoint>& point) {
    std::vector<Margin> margins;
    for (const PlacedDevice& placed : circuit.devices) {
        const bool thermal = placed.control.sense_high_c ||
                             operated_of(placed.control) == OperatedKind::by_temperature;
        if (thermal) margins.push_back(sensed_body_margin(circuit, placed, point));
    }
    return margins;
}

}  // namespace heatmatch
