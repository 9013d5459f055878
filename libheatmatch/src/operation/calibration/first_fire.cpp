#include "heatmatch/operation/calibration/first_fire.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <string_view>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using calibration_sentences::say;

namespace {

const Margin* margin_called(const Candidate& candidate, std::string_view name) {
    const auto& margins = candidate.margins();
    const auto found = std::find_if(margins.begin(), margins.end(),
                                    [name](const Margin& each) { return each.name == name; });
    return found == margins.end() ? nullptr : &*found;
}

/// The least limit of what a thermocouple on the sheath stands for.
std::optional<double> sheath_limit_c(const Candidate& candidate) {
    const Margin* sheath = margin_called(candidate, "sheath temperature");
    if (sheath == nullptr || !sheath->limit) return std::nullopt;
    double limit_c = *sheath->limit;
    const Margin* fill = margin_called(candidate, "store ceiling");
    if (fill != nullptr && fill->limit) limit_c = std::min(limit_c, *fill->limit);
    const Margin* coil = margin_called(candidate, "coil temperature");
    if (coil != nullptr && coil->limit && coil->value && sheath->value) {
        limit_c = std::min(limit_c, *coil->limit - std::max(0.0, *coil->value - *sheath->value));
    }
    return limit_c;
}

void add_stops(Sentences& told, const Candidate& candidate) {
    const Margin* sheath = margin_called(candidate, "sheath temperature");
    const auto stop_c = first_fire_stop_c(candidate);
    if (stop_c) {
        told.push_back(say<"first_fire.stop_sheath">(
            with<"stop">(*stop_c, unit::celsius),
            with<"limit">(*sheath_limit_c(candidate), unit::celsius)));
    } else {
        told.push_back(say<"first_fire.stop_unknown">());
    }
    if (sheath != nullptr && sheath->value) {
        told.push_back(
            stop_c && *sheath->value <= *stop_c
                ? say<"first_fire.expect">(with<"judged">(*sheath->value, unit::celsius))
                : say<"first_fire.too_hot">(with<"judged">(*sheath->value, unit::celsius)));
    }
    const Margin* wall = margin_called(candidate, "wall and lid");
    if (wall != nullptr && wall->limit) {
        told.push_back(say<"first_fire.stop_wall">(with<"limit">(*wall->limit, unit::celsius)));
    }
    told.push_back(say<"first_fire.stop_odd">());
    told.push_back(say<"first_fire.stop_how">());
}

}  // namespace

std::optional<double> first_fire_stop_c(const Candidate& candidate) {
    constexpr double least_error_k = 2.5;
    constexpr double error_share = 0.0075;
    const auto limit_c = sheath_limit_c(candidate);
    if (!limit_c) return std::nullopt;
    return *limit_c - std::max(least_error_k, error_share * *limit_c);
}

Sentences first_fire(const Candidate& candidate) {
    const auto& heat = candidate.circuit.heat;
    if (!heat || !heat->known() || heat->liquid) {
        const bool liquid = heat && heat->liquid;
        throw InvalidInput(
            {.part = "first fire",
             .field = liquid ? "medium" : "store",
             .value = liquid ? "a liquid" : "missing, or not described",
             .allowed = liquid ? "a bed of grains or a solid" : "known",
             .remedy = liquid ? say<"calibration.water">() : say<"calibration.describe_store">()});
    }
    constexpr double heating_h = 6.0;
    constexpr double cooling_h = 12.0;
    constexpr double reach_c = 1000.0;
    Sentences told{say<"first_fire.what">()};
    if (candidate.severity() == Severity::danger) told.push_back(say<"first_fire.danger">());
    told.push_back(say<"first_fire.place">(with<"reach">(reach_c, unit::celsius)));
    told.push_back(say<"first_fire.log">());
    told.push_back(say<"first_fire.long">(with<"heating">(heating_h, unit::hour),
                                          with<"cooling">(cooling_h, unit::hour)));
    add_stops(told, candidate);
    told.push_back(say<"first_fire.decide">());
    return told;
}

}  // namespace heatmatch
