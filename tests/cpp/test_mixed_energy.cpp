#include "demo.hpp"
#include "within.hpp"

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
    const std::vector<PanelPlace> places(2, PanelPlace{.weather = &weather, .noct_c = 45.0});
    const std::vector<int> months{12};
    const std::vector<double> ohms{4.0, 12.0, 40.0};
    const MixedEnergy energy = mixed_energy(array, places, ohms, months);
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
    const std::vector<PanelPlace> places{{.weather = &south}, {.weather = &east}};
    const std::vector<double> ohms{12.0};
    const std::vector<int> months{3};
    const MixedEnergy energy = mixed_energy(array, places, ohms, months);
    CHECK(energy.mpp_kwh < 0.99 * energy.sum_of_maxima_kwh);
    CHECK(energy.delivered_kwh[0] < energy.mpp_kwh);
    // Apart, on circuits of their own, they never deliver less at their best.
    CHECK(energy.delivered_kwh[0] > 0.2 * energy.sum_of_maxima_kwh);
}

TEST_CASE("planes that are not of one sky are refused") {
    const Weather weather = sky().weather();
    Weather shorter = weather;
    shorter.hours.pop_back();
    const MixedArray array = MixedArray::of({{.panels = {barn(), barn()}}});
    const std::vector<double> ohms{12.0};
    const std::vector<PanelPlace> odd{{.weather = &weather}, {.weather = &shorter}};
    CHECK_THROWS_WITH(static_cast<void>(mixed_energy(array, odd, ohms)),
                      doctest::Contains("from one sky"));
    const std::vector<PanelPlace> one{{.weather = &weather}};
    CHECK_THROWS_WITH(static_cast<void>(mixed_energy(array, one, ohms)),
                      doctest::Contains("one for each panel"));
}
