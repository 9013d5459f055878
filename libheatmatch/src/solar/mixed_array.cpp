#include "heatmatch/solar/mixed_array.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

namespace heatmatch {

namespace {

using solar_sentences::say;

[[noreturn]] void refuse_array(std::string part, const char* field, std::string value,
                               const char* allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = std::move(part),
                                   .field = field,
                                   .value = std::move(value),
                                   .allowed = allowed,
                                   .remedy = std::move(remedy)});
}

std::string place_of(std::size_t string, std::size_t panel) {
    return "array: string " + std::to_string(string + 1) + ", panel " + std::to_string(panel + 1);
}

// Forward voltages of silicon and Schottky diodes: common practice, no source.
Sentence diode_drops() {
    return say<"solar.diode_drop">(with<"drop">(0.7, unit::volt), with<"low">(0.4, unit::volt));
}

Sentence shade_remedy() {
    return say<"solar.shade_of_substring">(with<"none">(0.0), with<"all">(1.0));
}

bool is_drop(double volts) {
    return volts >= 0.0 && volts <= 2.0;
}

}  // namespace

int bypass_diodes_of(const Panel& panel) {
    const bool silicon = !panel.technology || panel.technology == Technology::mono_si ||
                         panel.technology == Technology::multi_si ||
                         panel.technology == Technology::heterojunction;
    constexpr int usual_diodes = 3;
    return panel.bypass_diodes.value_or(silicon ? usual_diodes : 0);
}

StringPanel string_panel(const Panel& panel) {
    const DatasheetFit fit = fit_single_diode(panel);
    StringPanel made{.diode = static_cast<const SingleDiode&>(fit), .assumed = fit.assumed};
    const int diodes = bypass_diodes_of(panel);
    if (!panel.bypass_diodes) {
        made.assumed.push_back(
            {.part = "panel \"" + panel.id + '"',
             .field = "bypass_diodes",
             .value = say<"solar.number">(with<"number">(static_cast<double>(diodes))),
             .source = say<"solar.common_practice">()});
    }
    made.substrings = std::max(1, diodes);
    made.bypass = diodes > 0;
    made.noct_c = fill_class_defaults(panel).panel.noct_c.value_or(usual_noct_c);
    return made;
}

MixedArray MixedArray::of(std::vector<PanelString> strings) {
    if (strings.empty()) {
        refuse_array("array", "strings", "none", "at least one string", say<"solar.one_panel">());
    }
    for (std::size_t s = 0; s < strings.size(); ++s) {
        const std::string string = "array: string " + std::to_string(s + 1);
        if (strings[s].panels.empty()) {
            refuse_array(string, "panels", "none", "at least one panel", say<"solar.one_panel">());
        }
        if (const auto drop = strings[s].blocking_v; drop && !is_drop(*drop)) {
            refuse_array(string, "blocking_v", format_number(*drop) + " V", "0 to 2 V",
                         diode_drops());
        }
        for (std::size_t p = 0; p < strings[s].panels.size(); ++p) {
            const StringPanel& panel = strings[s].panels[p];
            if (panel.substrings < 1) {
                refuse_array(place_of(s, p), "substrings", std::to_string(panel.substrings),
                             "at least 1", say<"solar.one_substring">());
            }
            if (panel.bypass && !is_drop(panel.bypass_v)) {
                refuse_array(place_of(s, p), "bypass_v", format_number(panel.bypass_v) + " V",
                             "0 to 2 V", diode_drops());
            }
        }
    }
    return {.strings = std::move(strings)};
}

std::size_t MixedArray::panel_count() const {
    std::size_t count = 0;
    for (const PanelString& string : strings) count += string.panels.size();
    return count;
}

MixedArrayCurve MixedArray::at(std::span<const PanelConditions> conditions) const {
    if (conditions.size() != panel_count()) {
        refuse_array(
            "array", "conditions", std::to_string(conditions.size()) + " panels",
            "one for each panel, string by string",
            say<"solar.panel_conditions">(with<"count">(static_cast<double>(panel_count()))));
    }
    std::vector<MixedArrayCurve::String> result;
    std::size_t index = 0;
    for (std::size_t s = 0; s < strings.size(); ++s) {
        MixedArrayCurve::String string{.curve = {.blocking_v = strings[s].blocking_v}};
        for (std::size_t p = 0; p < strings[s].panels.size(); ++p) {
            const StringPanel& panel = strings[s].panels[p];
            const PanelConditions& here = conditions[index++];
            const auto count = static_cast<std::size_t>(panel.substrings);
            if (!(here.irradiance_w_m2 >= 0.0 && here.irradiance_w_m2 <= 2000.0)) {
                refuse_array(place_of(s, p), "irradiance_w_m2",
                             format_number(here.irradiance_w_m2) + " W/m2", "0 to 2000 W/m2",
                             say<"solar.sun_of_panel">());
            }
            if (!here.shade.empty() && here.shade.size() != count) {
                refuse_array(place_of(s, p), "shade",
                             std::to_string(here.shade.size()) + " substrings",
                             "one for each substring, or none", shade_remedy());
            }
            const SingleDiode one =
                panel.diode.scaled(1.0, 1.0 / static_cast<double>(panel.substrings));
            MixedArrayCurve::Panel made{.bypass_v = panel.bypass ? std::optional(panel.bypass_v)
                                                                 : std::nullopt};
            for (std::size_t i = 0; i < count; ++i) {
                const double shade = here.shade.empty() ? 0.0 : here.shade[i];
                if (!(shade >= 0.0 && shade <= 1.0)) {
                    refuse_array(place_of(s, p), "shade", format_number(shade), "0 to 1",
                                 shade_remedy());
                }
                const DiodeCurve curve =
                    one.at(here.irradiance_w_m2 * (1.0 - shade), here.cell_temperature_c);
                string.curve.add(curve, made.bypass_v);
                made.substrings.push_back(curve);
            }
            string.panels.push_back(std::move(made));
        }
        result.push_back(std::move(string));
    }
    return MixedArrayCurve(std::move(result));
}

}  // namespace heatmatch
