#pragma once

#include <cmath>
#include <fstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "heatmatch/solar/mixed_array.hpp"

/// The lines of tests/reference/mixed_open.jsonl: what the panels are, then the cases.
inline std::vector<nlohmann::json> reference_lines() {
    std::ifstream file(std::string(HEATMATCH_REFERENCE_DIR) + "/mixed_open.jsonl");
    REQUIRE(file);
    std::vector<nlohmann::json> lines;
    for (std::string line; std::getline(file, line);) lines.push_back(nlohmann::json::parse(line));
    return lines;
}

inline heatmatch::StringPanel panel_of_kind(const nlohmann::json& kind) {
    return {
        .diode = {.light_current_a = kind.at("light_current_a"),
                  .ln_saturation_current = std::log(kind.at("saturation_current_a").get<double>()),
                  .series_resistance_ohm = kind.at("series_resistance_ohm"),
                  .shunt_conductance_s = 1.0 / kind.at("shunt_resistance_ohm").get<double>(),
                  .modified_ideality_v = kind.at("modified_ideality_v"),
                  .alpha_isc_a_per_k = kind.at("alpha_isc_a_per_k")},
        .substrings = kind.at("substrings"),
        .bypass = kind.at("bypass")};
}

/// An array and its conditions.
struct MixedCase {
    std::vector<heatmatch::PanelString> strings{};
    std::vector<heatmatch::PanelConditions> conditions{};

    [[nodiscard]] heatmatch::MixedArrayCurve curve() const {
        return heatmatch::MixedArray::of(strings).at(conditions);
    }
};

inline MixedCase mixed_case(const nlohmann::json& line, const nlohmann::json& kinds) {
    MixedCase found;
    for (const nlohmann::json& string : line.at("strings")) {
        heatmatch::PanelString made;
        if (!string.at("blocking_v").is_null()) made.blocking_v = string.at("blocking_v");
        for (const nlohmann::json& panel : string.at("panels")) {
            heatmatch::StringPanel one =
                panel_of_kind(kinds.at(panel.at("kind").get<std::string>()));
            if (panel.at("bypass_v").is_null()) {
                one.bypass = false;
            } else {
                one.bypass_v = panel.at("bypass_v");
            }
            made.panels.push_back(one);
            found.conditions.push_back(
                {.irradiance_w_m2 = panel.at("irradiance_w_m2"),
                 .cell_temperature_c = panel.at("cell_temperature_c"),
                 .shade = panel.at("shade_of_substrings").get<std::vector<double>>()});
        }
        found.strings.push_back(std::move(made));
    }
    return found;
}
