#include "heatmatch/operation/calibration/first_fire.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
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

/// Margins that a thermocouple on the sheath has to protect.
constexpr auto answered_for =
    std::to_array<std::string_view>({"sheath temperature", "coil temperature", "store ceiling"});

/// The reading at which the first of these limits is reached, each minus the difference between its
/// part and the sheath; empty while one of them is not known.
std::optional<double> sheath_limit_c(const Candidate& candidate) {
    const Margin* sheath = margin_called(candidate, "sheath temperature");
    if (sheath == nullptr || !sheath->value || !sheath->limit) return std::nullopt;
    const auto reading_c = [sheath](const Margin& margin) {
        return *margin.limit - std::max(0.0, *margin.value - *sheath->value);
    };
    double limit_c = *sheath->limit;
    for (const std::string_view name : answered_for) {
        const Margin* margin = margin_called(candidate, name);
        if (margin == nullptr || !margin->value || !margin->limit) return std::nullopt;
        limit_c = std::min(limit_c, reading_c(*margin));
    }
    // In settled sand the sheath is hotter than at the thermocouple.
    const Margin* settled = margin_called(candidate, "settled sand");
    if (settled != nullptr && settled->value && settled->limit) {
        limit_c = std::min(limit_c, reading_c(*settled));
    }
    return limit_c;
}

void add_stops(Sentences& said, const Candidate& candidate) {
    const Margin* sheath = margin_called(candidate, "sheath temperature");
    const Margin* coil = margin_called(candidate, "coil temperature");
    const auto stop_c = first_fire_stop_c(candidate);
    if (stop_c) {
        said.push_back(say<"first_fire.stop_sheath">(
            with<"stop">(*stop_c, unit::celsius),
            with<"limit">(*sheath_limit_c(candidate), unit::celsius)));
    } else if (coil != nullptr && !coil->limit && sheath != nullptr && sheath->limit) {
        said.push_back(say<"first_fire.stop_without_coil">());
    } else {
        said.push_back(say<"first_fire.stop_unknown">());
    }
    if (sheath != nullptr && sheath->value) {
        const auto judged = with<"judged">(*sheath->value, unit::celsius);
        said.push_back(!stop_c                     ? say<"first_fire.judged">(judged)
                       : *sheath->value <= *stop_c ? say<"first_fire.expect">(judged)
                                                   : say<"first_fire.too_hot">(judged));
    }
    const Margin* wall = margin_called(candidate, "wall and lid");
    if (wall != nullptr && wall->limit) {
        said.push_back(say<"first_fire.stop_wall">(with<"limit">(*wall->limit, unit::celsius)));
    }
    said.push_back(say<"first_fire.stop_odd">());
    said.push_back(say<"first_fire.stop_how">());
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
            {.part = "first heating",
             .field = liquid ? "medium" : "store",
             .value = liquid ? "a liquid" : "missing, or not described",
             .allowed = liquid ? "a bed of grains or a solid" : "known",
             .remedy = liquid ? say<"calibration.water">() : say<"calibration.describe_store">()});
    }
    if (candidate.circuit.bank.unlike) {
        throw InvalidInput({.part = "first heating",
                            .field = "elements",
                            .value = candidate.circuit.bank.label(),
                            .allowed = "equal elements",
                            .remedy = say<"calibration.equal_elements">()});
    }
    constexpr double heating_h = 6.0;
    constexpr double cooling_h = 12.0;
    constexpr double reach_c = 1000.0;
    Sentences said{say<"first_fire.what">()};
    if (candidate.severity() == Severity::danger) said.push_back(say<"first_fire.danger">());
    said.push_back(say<"first_fire.place">(with<"reach">(reach_c, unit::celsius)));
    said.push_back(say<"first_fire.log">());
    said.push_back(say<"first_fire.long">(with<"heating">(heating_h, unit::hour),
                                          with<"cooling">(cooling_h, unit::hour)));
    add_stops(said, candidate);
    said.push_back(say<"first_fire.decide">());
    return said;
}

}  // namespace heatmatch
