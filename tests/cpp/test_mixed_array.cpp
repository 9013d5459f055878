#include "mixed_cases.hpp"
#include "within.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/array.hpp"
#include "heatmatch/solar/mixed_array.hpp"

using heatmatch::Array;
using heatmatch::ArrayPoint;
using heatmatch::MixedArray;
using heatmatch::MixedArrayCurve;
using heatmatch::OperatingPoint;
using heatmatch::PanelConditions;
using heatmatch::PanelString;
using heatmatch::SingleDiode;
using heatmatch::StringPanel;
using nlohmann::json;

namespace {

StringPanel sample_panel(double scale = 1.0) {
    return {.diode = {.light_current_a = 8.6 * scale,
                      .ln_saturation_current = std::log(3e-10),
                      .series_resistance_ohm = 0.33,
                      .shunt_conductance_s = 1.0 / 380.0,
                      .modified_ideality_v = 1.55,
                      .alpha_isc_a_per_k = 0.0043},
            .substrings = 3};
}

}  // namespace

// Source: tests/reference/mixed_open.jsonl, curves and sums by pvlib and SciPy.
TEST_CASE("fifty unlike arrays with shade, bypass and blocking diodes agree with pvlib to 1e-9") {
    const std::vector<json> lines = reference_lines();
    const json& kinds = lines.front().at("panels_at_stc");
    REQUIRE(lines.size() == 51);
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const json& line = lines[i];
        const int number = line.at("case");
        CAPTURE(number);
        const MixedCase made = mixed_case(line, kinds);
        const MixedArrayCurve curve = made.curve();
        const OperatingPoint point = curve.into_resistance(line.at("resistance_ohm"));
        const auto near = [](double ours, const json& truth, double floor) {
            const double value = truth.get<double>();
            return std::fabs(ours - value) <= 1e-9 * std::max(std::fabs(value), floor);
        };
        CHECK(near(point.voltage_v, line.at("voltage_v"), 0.0));
        CHECK(near(point.current_a, line.at("current_a"), 0.0));
        CHECK(near(point.power_w, line.at("power_w"), 0.0));
        const ArrayPoint all = curve.at_voltage(point.voltage_v);
        CHECK(all.total.current_a == doctest::Approx(point.current_a).epsilon(1e-9));
        for (std::size_t s = 0; s < all.strings.size(); ++s) {
            const json& string = line.at("strings").at(s);
            CHECK(near(all.strings[s].current_a, string.at("current_a"), 0.1));
            for (std::size_t p = 0; p < all.strings[s].panels.size(); ++p) {
                const json& panel = string.at("panels").at(p);
                const auto& ours = all.strings[s].panels[p];
                CHECK(near(ours.voltage_v, panel.at("voltage_v"), 1.0));
                CHECK(ours.substrings_bypassed() == panel.at("substrings_bypassed").get<int>());
            }
        }
    }
}

// Source: arithmetic: equal panels share one curve, so the array is that curve scaled.
TEST_CASE("equal panels reduce to the uniform array to 1e-12") {
    const StringPanel panel = sample_panel();
    for (const auto& [series, parallel] : {std::pair{1, 1}, {2, 1}, {3, 2}, {1, 4}}) {
        std::vector<PanelString> strings(
            static_cast<std::size_t>(parallel),
            {.panels = std::vector<StringPanel>(static_cast<std::size_t>(series), panel)});
        const std::vector<PanelConditions> conditions(static_cast<std::size_t>(series * parallel),
                                                      {640.0, 37.0, {}});
        const MixedArrayCurve curve = MixedArray::of(strings).at(conditions);
        const heatmatch::ArrayCurve uniform =
            Array::uniform(panel.diode, series, parallel).at(640.0, 37.0);
        for (const double ohms : {0.3, 2.0, 7.0, 31.0, 400.0}) {
            CHECK(within(curve.into_resistance(ohms).power_w, uniform.into_resistance(ohms).power_w,
                         1e-12));
        }
        CHECK(within(curve.open_circuit_voltage_v(), uniform.open_circuit_voltage_v(), 1e-12));
        CHECK(within(curve.short_circuit_current_a(), uniform.short_circuit_current_a(), 1e-12));
        CHECK(within(curve.maximum_power().power_w, uniform.maximum_power().power_w, 1e-12));
        const double half_v = 0.5 * curve.open_circuit_voltage_v();
        CHECK(within(curve.voltage_v(curve.current_a(half_v)), half_v, 1e-12));
    }
}

TEST_CASE("power never exceeds the sum of the panels' maxima, and order does not matter") {
    const std::vector<json> lines = reference_lines();
    const json& kinds = lines.front().at("panels_at_stc");
    for (std::size_t i = 1; i < lines.size(); ++i) {
        MixedCase made = mixed_case(lines[i], kinds);
        const MixedArrayCurve curve = made.curve();
        const double bound_w = curve.sum_of_maxima_w();
        const double largest_w = curve.maximum_power().power_w;
        CHECK(largest_w <= bound_w * (1.0 + 1e-12));
        for (const OperatingPoint& each : curve.power_maxima()) {
            CHECK(each.power_w <= largest_w);
        }
        const double ohms = lines[i].at("resistance_ohm");
        const double power_w = curve.into_resistance(ohms).power_w;
        CHECK(power_w <= bound_w * (1.0 + 1e-12));
        std::reverse(made.strings.begin(), made.strings.end());
        for (PanelString& string : made.strings) {
            std::reverse(string.panels.begin(), string.panels.end());
        }
        std::reverse(made.conditions.begin(), made.conditions.end());
        const MixedArrayCurve turned = made.curve();
        CHECK(within(turned.into_resistance(ohms).power_w, power_w, 1e-12));
    }
}

TEST_CASE("a dark panel without a bypass diode stops its string, and one in parallel absorbs") {
    StringPanel bare = sample_panel();
    bare.bypass = false;
    const std::vector<PanelConditions> half_dark{{900.0, 30.0, {}}, {0.0, 10.0, {}}};
    const MixedArrayCurve stopped = MixedArray::of({{.panels = {bare, bare}}}).at(half_dark);
    CHECK(stopped.short_circuit_current_a() < 1e-8);
    const MixedArrayCurve bypassed =
        MixedArray::of({{.panels = {sample_panel(), sample_panel()}}}).at(half_dark);
    CHECK(bypassed.short_circuit_current_a() > 7.0);
    const ArrayPoint point = bypassed.at_voltage(20.0);
    CHECK(point.strings[0].panels[1].substrings_bypassed() == 3);
    CHECK(within(point.strings[0].panels[1].voltage_v, -1.5, 1e-12));
    CHECK(within(point.strings[0].panels[1].bypass_w, 1.5 * point.total.current_a, 1e-6));

    const PanelString two{.panels = {sample_panel(), sample_panel()}};
    PanelString one{.panels = {sample_panel()}};
    const std::vector<PanelConditions> all(3, {900.0, 30.0, {}});
    const MixedArrayCurve open = MixedArray::of({two, one}).at(all);
    const ArrayPoint reverse = open.at_voltage(open.open_circuit_voltage_v());
    CHECK(std::fabs(reverse.total.current_a) < 1e-9);
    CHECK(reverse.strings[1].current_a < -6.0);
    CHECK(reverse.strings[1].panels[0].power_w < -200.0);
    one.blocking_v = heatmatch::diode_drop_v;
    const MixedArrayCurve blocked = MixedArray::of({two, one}).at(all);
    CHECK(blocked.at_voltage(blocked.open_circuit_voltage_v()).strings[1].current_a == 0.0);
    CHECK(blocked.open_circuit_voltage_v() > 1.5 * open.open_circuit_voltage_v());
}

TEST_CASE("odd arrays and conditions are one error each") {
    const auto message = [](const std::vector<PanelString>& strings,
                            const std::vector<PanelConditions>& conditions) -> std::string {
        try {
            static_cast<void>(MixedArray::of(strings).at(conditions));
        } catch (const heatmatch::InvalidInput& error) {
            return error.what();
        }
        return "";
    };
    const auto has = [](const std::string& text, const char* word) {
        return text.find(word) != std::string::npos;
    };
    const PanelString fine{.panels = {sample_panel()}};
    CHECK(message({fine}, {{500.0, 25.0, {}}}).empty());
    CHECK(has(message({}, {}), "strings = none"));
    CHECK(has(message({fine, {}}, {}), "string 2: panels"));
    CHECK(has(message({{.panels = {sample_panel()}, .blocking_v = 3.0}}, {}), "blocking_v = 3 V"));
    StringPanel odd = sample_panel();
    odd.substrings = 0;
    CHECK(has(message({{.panels = {sample_panel(), odd}}}, {}), "string 1, panel 2: substrings"));
    odd = sample_panel();
    odd.bypass_v = -0.5;
    CHECK(has(message({{.panels = {odd}}}, {}), "bypass_v = -0.5 V"));
    CHECK(has(message({fine}, {}), "this array has 1 panels"));
    CHECK(has(message({fine}, {{-1.0, 25.0, {}}}), "irradiance_w_m2"));
    CHECK(has(message({fine}, {{std::nan(""), 25.0, {}}}), "irradiance_w_m2"));
    CHECK(has(message({fine}, {{500.0, 25.0, {0.1, 0.2}}}), "shade = 2 substrings"));
    CHECK(has(message({fine}, {{500.0, 25.0, {0.1, 0.2, 1.2}}}), "shade = 1.2"));
}
