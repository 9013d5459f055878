#include "demo.hpp"
#include "long_run.hpp"
#include "within.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/mixed_energy.hpp"
#include "heatmatch/solar/monthly_sky.hpp"

using heatmatch::MixedArray;
using heatmatch::MixedEnergy;
using heatmatch::PanelPlace;
using heatmatch::StringPanel;
using heatmatch::Weather;

namespace {

const heatmatch::MonthlySky& sky() {
    static const heatmatch::MonthlySky made(*demo().weather, demo().site);
    return made;
}

StringPanel barn() {
    return heatmatch::string_panel(heatmatch::find_panel(starter(), "silicon-60-cell-245"));
}

}  // namespace

// Source: arithmetic: equal panels on one plane are the array of equal panels, hour by hour.
TEST_CASE("the energy of equal panels on one plane is the exact sum of their energy curve") {
    const Weather weather = sky().weather();
    const StringPanel panel = barn();
    const MixedArray array = MixedArray::of({{.panels = {panel, panel}}});
    const std::vector<PanelPlace> places(2);
    const std::vector<const Weather*> planes{&weather};
    const std::vector<int> months{12};
    const std::vector<double> ohms{4.0, 12.0, 40.0};
    const MixedEnergy energy = mixed_energy(array, places, planes, ohms, months);
    double sum_kwh = 0.0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        if (weather.month[row] != 12) continue;
        sum_kwh += weather.hours[row] / 1000.0 *
                   heatmatch::Array::uniform(panel.diode, 2, 1)
                       .at(weather.irradiance_w_m2[row], weather.cell_temperature_c(row, 45.0))
                       .into_resistance(ohms[1])
                       .power_w;
    }
    CHECK(within(energy.delivered_kwh[1], sum_kwh, 1e-12));
    CHECK(within(energy.mpp_kwh, energy.sum_of_maxima_kwh, 1e-12));
    for (const double kwh : energy.delivered_kwh) CHECK(kwh < energy.mpp_kwh);
}

TEST_CASE("panels on two planes in one string deliver less than each could alone") {
    const Weather south = sky().weather(60.0, 180.0);
    const Weather east = sky().weather(60.0, 90.0);
    const MixedArray array = MixedArray::of({{.panels = {barn(), barn()}}});
    const std::vector<PanelPlace> places{{.plane = 0}, {.plane = 1}};
    const std::vector<const Weather*> planes{&south, &east};
    const std::vector<double> ohms{12.0};
    const std::vector<int> months{3};
    const MixedEnergy energy = mixed_energy(array, places, planes, ohms, months);
    CHECK(energy.mpp_kwh < 0.99 * energy.sum_of_maxima_kwh);
    CHECK(energy.delivered_kwh[0] < energy.mpp_kwh);
    // Apart, on circuits of their own, they never deliver less at their best.
    CHECK(energy.delivered_kwh[0] > 0.2 * energy.sum_of_maxima_kwh);
}

TEST_CASE("planes that are not of one sky are refused") {
    const Weather weather = sky().weather();
    Weather shorter = weather;
    shorter.hours.front() = 0.5;
    const MixedArray array = MixedArray::of({{.panels = {barn(), barn()}}});
    const std::vector<double> ohms{12.0};
    const std::vector<PanelPlace> two{{.plane = 0}, {.plane = 1}};
    const std::vector<const Weather*> odd{&weather, &shorter};
    CHECK_THROWS_WITH(static_cast<void>(mixed_energy(array, two, odd, ohms)),
                      doctest::Contains("from one sky"));
    const std::vector<PanelPlace> one{{.plane = 0}};
    const std::vector<const Weather*> planes{&weather};
    CHECK_THROWS_WITH(static_cast<void>(mixed_energy(array, one, planes, ohms)),
                      doctest::Contains("one for each panel"));
}

namespace {

/// Six panels of three kinds on two planes: a string of each plane, or one string of both.
struct Yard {
    Weather south = sky().weather(60.0, 180.0);
    Weather west = sky().weather(40.0, 260.0);
    std::vector<const Weather*> planes{&south, &west};
    std::vector<double> noct_c{45.0, 47.0, 44.0};

    [[nodiscard]] StringPanel kind(std::size_t i) const {
        constexpr const char* ids[] = {"silicon-60-cell-245", "silicon-60-cell-270",
                                       "silicon-72-cell-355"};
        return heatmatch::string_panel(heatmatch::find_panel(starter(), ids[i]));
    }
    [[nodiscard]] PanelPlace place(std::size_t i, std::size_t plane) const {
        return {.plane = plane, .noct_c = noct_c[i]};
    }
    [[nodiscard]] heatmatch::PlacedArray one_string() const {
        return {.array = MixedArray::of(
                    {{.panels = {kind(0), kind(1), kind(2), kind(0), kind(1), kind(2)}}}),
                .places = {place(0, 0), place(1, 0), place(2, 1), place(0, 1), place(1, 0),
                           place(2, 0)}};
    }
    [[nodiscard]] heatmatch::PlacedArray two_strings() const {
        return {.array = MixedArray::of({{.panels = {kind(0), kind(1), kind(2)}},
                                         {.panels = {kind(0), kind(1), kind(2)}}}),
                .places = {place(0, 0), place(1, 0), place(2, 0), place(0, 1), place(1, 1),
                           place(2, 1)}};
    }
};

const Yard& yard() {
    static const Yard made;
    return made;
}

}  // namespace

// Source: the exact sum over every row, hour by hour.
TEST_CASE("a condensed curve of two planes is within 1e-3 of every hour from 0.3 to 6 match ohms") {
    for (const bool one : {true, false}) {
        if (in_a_slow_build() && !one) continue;
        heatmatch::PlacedArray placed = one ? yard().one_string() : yard().two_strings();
        const double match_ohm = heatmatch::stc_match_ohm(placed.array);
        std::vector<double> ohms;
        for (int i = 0; i <= 12; ++i) ohms.push_back(0.3 * match_ohm * std::pow(20.0, i / 12.0));
        const MixedEnergy exact =
            heatmatch::mixed_energy(placed.array, placed.places, yard().planes, ohms);
        placed.planes = heatmatch::plane_nodes(yard().planes);
        const heatmatch::EnergyCurve curve(placed, match_ohm);
        double worst = 0.0;
        for (std::size_t r = 0; r < ohms.size(); ++r) {
            worst = std::max(
                worst, std::fabs(curve.delivered_kwh(ohms[r]) / exact.delivered_kwh[r] - 1.0));
        }
        CAPTURE(one);
        CAPTURE(placed.planes.front().size());
        CHECK(worst < 1e-3);
        CHECK(within(curve.mpp_kwh(), exact.mpp_kwh, 3e-3));
        CHECK(placed.planes.front().size() < 1500);  // of 4,400 sunlit hours
    }
}

// Source: the solved points of each row's curve.
TEST_CASE("the sums of a curve over every row are those of its solved points") {
    for (const bool one : {true, false}) {
        if (in_a_slow_build() && one) continue;
        heatmatch::PlacedArray placed = one ? yard().one_string() : yard().two_strings();
        placed.places[1].shade = {0.0, 0.6, 1.0};
        placed.array.strings.front().blocking_v = 0.5;
        placed.planes = heatmatch::plane_nodes(yard().planes, {.months = {3}, .exact = true});
        const double match_ohm = heatmatch::stc_match_ohm(placed.array);
        const heatmatch::EnergyCurve curve(placed, match_ohm);
        const std::vector<double> ohms(curve.grid_ohm().begin(), curve.grid_ohm().end());
        const MixedEnergy exact = heatmatch::mixed_energy(placed.array, placed.places,
                                                          yard().planes, ohms, std::vector{3});
        for (std::size_t r = 0; r < ohms.size(); ++r) {
            CHECK(within(curve.delivered_kwh(ohms[r]), exact.delivered_kwh[r], 1e-7));
        }
        // The slope is that of the energy.
        const double ohm = curve.grid_ohm()[30];
        const std::vector<double> pair{ohm * 0.99999, ohm * 1.00001};
        const MixedEnergy sides = heatmatch::mixed_energy(placed.array, placed.places,
                                                          yard().planes, pair, std::vector{3});
        const double slope =
            (sides.delivered_kwh[1] - sides.delivered_kwh[0]) / std::log(pair[1] / pair[0]);
        CHECK(curve.slope_kwh(ohm) == doctest::Approx(slope).epsilon(1e-3));
        CHECK(curve.largest(ohm).power_w > 0.0);
        CHECK(curve.hours_above(ohm, 1.0) > 0.0);
    }
}
