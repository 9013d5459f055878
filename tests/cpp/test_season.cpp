#include "demo.hpp"
#include "greensboro.hpp"
#include "refusal.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/season.hpp"

using heatmatch::Circuit;
using heatmatch::Season;
using heatmatch::season_curves;
using heatmatch::season_of;
using heatmatch::season_weather;
using heatmatch::SeasonWeather;
using heatmatch::Weather;

namespace {

/// Energy of the circuit into its bank over the rows of some months, row by row [kWh].
double energy_by_hand(const Circuit& circuit, const Weather& weather,
                      const std::vector<int>& months, double factor, double bank_ohm) {
    const auto diode = circuit.panel.today.scaled(factor, 1.0);
    double sum = 0.0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        const bool in_season =
            std::find(months.begin(), months.end(), weather.month[row]) != months.end();
        if (!in_season || weather.irradiance_w_m2[row] <= 0.0) continue;
        const double cell_c = weather.cell_temperature_c(row, *circuit.panel.panel.noct_c);
        const auto curve =
            heatmatch::Array::uniform(diode, circuit.panels.series, circuit.panels.parallel)
                .at(weather.irradiance_w_m2[row], cell_c);
        const double current = curve.into_resistance(bank_ohm + circuit.wire_ohm()).current_a;
        sum += weather.hours[row] * current * current * bank_ohm;
    }
    return sum / 1000.0;
}

const std::vector<int> winter{11, 12, 1, 2, 3};

Circuit pair_circuit() {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.runs.front().run.length_m = 12.0;
    return circuit;
}

Season winter_season(const Circuit& circuit) {
    const SeasonWeather weather = season_weather(greensboro(), winter);
    return season_of(circuit, season_curves(circuit.panel, weather), weather, 30.0);
}

}  // namespace

// Source: the sum row by row, with the array, the wire and the bank in full.
TEST_CASE("a season's energy is that of its rows") {
    const Circuit circuit = pair_circuit();
    const double ohm = circuit.bank.typical_ohm();
    const Season season = winter_season(circuit);
    CHECK(circuit.wire_ohm() > 0.05);
    CHECK(season.kwh ==
          doctest::Approx(energy_by_hand(circuit, greensboro(), winter, 1.0, ohm)).epsilon(5e-4));
    CHECK(season.days == 151.0);
    for (int month = 1; month <= 12; ++month) {
        const auto index = static_cast<std::size_t>(month - 1);
        const double days = heatmatch::days_of_month[index];
        CHECK(season.kwh_per_day[index] ==
              doctest::Approx(energy_by_hand(circuit, greensboro(), {month}, 1.0, ohm) / days)
                  .epsilon(2e-3));
        CHECK(season.mpp_kwh_per_day[index] > season.kwh_per_day[index]);
    }
    CHECK(season.harvest_fraction() == doctest::Approx(season.kwh / season.mpp_kwh));
    CHECK(season.mean_kwh_per_day() == doctest::Approx(season.kwh / 151.0));
    CHECK(*season.price_per_kwh == doctest::Approx(30.0 / season.kwh));
}

TEST_CASE("with every row kept the season is exact") {
    const Circuit circuit = pair_circuit();
    const SeasonWeather weather = season_weather(greensboro(), winter, true);
    const Season season =
        season_of(circuit, season_curves(circuit.panel, weather), weather, std::nullopt);
    CHECK(season.kwh == doctest::Approx(energy_by_hand(circuit, greensboro(), winter, 1.0,
                                                       circuit.bank.typical_ohm()))
                            .epsilon(1e-5));
    CHECK(!season.price_per_kwh);
}

// Source: the definition, tried on every row: the largest power of the bank, in equal shares.
TEST_CASE("an element's most in the season is its share of the brightest row") {
    const Weather weather = greensboro();
    const SeasonWeather rows = season_weather(weather, winter, true);
    for (const heatmatch::Hookup bank : {heatmatch::Hookup{1, 2}, heatmatch::Hookup{2, 1},
                                         heatmatch::Hookup{2, 3}, heatmatch::Hookup{1, 1}}) {
        Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 2}, "tubular-1000-120", bank);
        circuit.runs = {bench_run("thhn-12-awg", 30.0)};
        circuit.runs.front().run.length_m = 12.0;
        const double ohm = circuit.bank.typical_ohm();
        double most_w = 0.0;
        for (std::size_t row = 0; row < weather.size(); ++row) {
            const bool in_season =
                std::find(winter.begin(), winter.end(), weather.month[row]) != winter.end();
            if (!in_season || weather.irradiance_w_m2[row] <= 0.0) continue;
            const double cell_c = weather.cell_temperature_c(row, *circuit.panel.panel.noct_c);
            const double current = heatmatch::Array::uniform(circuit.panel.today, 2, 2)
                                       .at(weather.irradiance_w_m2[row], cell_c)
                                       .into_resistance(ohm + circuit.wire_ohm())
                                       .current_a;
            most_w = std::max(most_w, current * current * ohm);
        }
        const Season season =
            season_of(circuit, season_curves(circuit.panel, rows), rows, std::nullopt);
        CHECK(season.element_power_w == doctest::Approx(most_w / bank.count()).epsilon(1e-5));
    }
}

TEST_CASE("the band includes the ends of panel current and element resistance") {
    const Circuit circuit = pair_circuit();
    const Season season = winter_season(circuit);
    double least = season.kwh;
    double most = season.kwh;
    for (double factor : {circuit.panel.current_factor_low, circuit.panel.current_factor_high}) {
        const double relative = factor / circuit.panel.current_factor;
        for (double ohm : {circuit.bank.low_ohm(), circuit.bank.high_ohm()}) {
            const double kwh = energy_by_hand(circuit, greensboro(), winter, relative, ohm);
            least = std::min(least, kwh);
            most = std::max(most, kwh);
        }
    }
    CHECK(season.kwh_low == doctest::Approx(least).epsilon(1e-3));
    CHECK(season.kwh_high >= most * (1.0 - 1e-3));
    CHECK(season.kwh_low < season.kwh);
    CHECK(season.kwh_high > season.kwh);
    CHECK(!season.cloud_band);
}

TEST_CASE("the best resistance absorbs more than its neighbors, and is above Vmp/Imp") {
    Circuit circuit = pair_circuit();
    const Season season = winter_season(circuit);
    const double most = energy_by_hand(circuit, greensboro(), winter, 1.0, season.best_ohm);
    CHECK(most > energy_by_hand(circuit, greensboro(), winter, 1.0, 0.97 * season.best_ohm));
    CHECK(most > energy_by_hand(circuit, greensboro(), winter, 1.0, 1.03 * season.best_ohm));
    CHECK(season.best_ohm > 1.1 * season.stc_match_ohm);
    CHECK(contains(season.best_ohm_sentence(), "ohm"));
    CHECK(contains(season.best_ohm_sentence(), "the voltage hardly does"));
    const double noon = energy_by_hand(circuit, greensboro(), winter, 1.0, season.stc_match_ohm);
    CHECK(season.best_kwh == doctest::Approx(most).epsilon(1e-3));
    CHECK(season.stc_match_kwh == doctest::Approx(noon).epsilon(1e-3));
    CHECK(season.stc_match_loss() == doctest::Approx(1.0 - noon / most).epsilon(0.02));
    CHECK(contains(season.stc_match_loss_sentence(), "% less than the"));
    CHECK(!contains(season.stc_match_loss_sentence(), "cloud"));
}

TEST_CASE("cloud within the hour widens the band and lowers the best resistance") {
    const Circuit circuit = pair_circuit();
    Weather cloudy = greensboro();
    for (double sun : cloudy.irradiance_w_m2) {
        cloudy.clear_w_m2.push_back(sun > 0.0 ? 900.0 : 0.0);
        cloudy.overcast_w_m2.push_back(0.3 * sun);
    }
    const SeasonWeather weather = season_weather(cloudy, winter);
    const Season season =
        season_of(circuit, season_curves(circuit.panel, weather), weather, std::nullopt);
    const Season smooth = winter_season(circuit);
    CHECK(season.cloud_band);
    CHECK(season.kwh == smooth.kwh);
    CHECK(season.kwh_low <= smooth.kwh_low);
    CHECK(season.kwh_high >= smooth.kwh_high);
    REQUIRE(season.best_ohm_cloud);
    CHECK(*season.best_ohm_cloud < season.best_ohm);
    CHECK(*season.best_ohm_cloud > season.stc_match_ohm);
    CHECK(contains(season.best_ohm_sentence(), "With clouds passing within the hour"));
    REQUIRE(season.stc_match_loss_cloud);
    CHECK(*season.stc_match_loss_cloud > 0.0);
    CHECK(*season.stc_match_loss_cloud < season.stc_match_loss());
    CHECK(contains(season.stc_match_loss_sentence(), "less with clouds passing within the hour."));
    CHECK(!smooth.best_ohm_cloud);
    CHECK(!contains(smooth.best_ohm_sentence(), "Cloud"));
}

TEST_CASE("weather brighter than the irradiance of margins is reported") {
    const SeasonWeather weather = season_weather(greensboro(), winter);
    CHECK(weather.brightest_w_m2 > 1000.0);
    const heatmatch::Sentence remark = bright_remark(weather, {.record_low_c = -20.0});
    CHECK(contains(remark, "instead of the site's 1000 W/m2"));
    CHECK(
        bright_remark(weather, {.record_low_c = -20.0, .bright_irradiance_w_m2 = 1250.0}).empty());
}

TEST_CASE("a month missing from the weather is reported and not counted") {
    const std::vector<double> sun(24 * 31, 300.0);
    const std::vector<double> cells(sun.size(), 10.0);
    const std::vector<std::uint8_t> month(sun.size(), 12);
    const Weather december = heatmatch::weather_from_plane(sun, cells, 1.0, month);
    const SeasonWeather season = season_weather(december, winter);
    CHECK(season.days == 31.0);
    REQUIRE(season.remarks.size() == 1);
    CHECK(contains(season.remarks.front(), "do not cover November, January, February, March"));
    CHECK_THROWS_WITH(static_cast<void>(season_weather(december, std::vector<int>{6})),
                      doctest::Contains("no sun in the months asked for"));
}

TEST_CASE("a partly known month represents the whole, and that is reported") {
    std::vector<double> sun;
    std::vector<std::uint8_t> month;
    for (int row = 0; row < 24 * 15; ++row) {
        sun.push_back(row % 24 < 8 ? 300.0 : 0.0);
        month.push_back(1);
    }
    sun.push_back(100.0);
    month.push_back(0);
    const std::vector<double> cells(sun.size(), 5.0);
    const SeasonWeather season =
        season_weather(heatmatch::weather_from_plane(sun, cells, 1.0, month), std::vector<int>{1});
    CHECK(season.days == 31.0);
    CHECK(season.season.sunlit_hours() == doctest::Approx(31.0 * 8.0));
    REQUIRE(season.remarks.size() == 2);
    CHECK(contains(season.remarks[0], "a part of January (48%)"));
    CHECK(contains(season.remarks[1], "1 sunlit rows of the weather data have no month"));
}

TEST_CASE("rows without nights are not taken for a part of the month") {
    const std::vector<double> sun(31 * 9, 500.0);
    const std::vector<double> cells(sun.size(), 5.0);
    const std::vector<std::uint8_t> month(sun.size(), 1);
    const SeasonWeather season =
        season_weather(heatmatch::weather_from_plane(sun, cells, 1.0, month), std::vector<int>{1});
    CHECK(season.season.sunlit_hours() == doctest::Approx(31.0 * 9.0));
    REQUIRE(season.remarks.size() == 1);
    CHECK(contains(season.remarks.front(), "no nights in January"));
}

TEST_CASE("panels that lost current have a higher Vmp/Imp too") {
    Circuit circuit = pair_circuit();
    const Season label = winter_season(circuit);
    circuit.panel.today = circuit.panel.today.scaled(0.6, 1.0);
    const Season tired = winter_season(circuit);
    CHECK(tired.stc_match_ohm / label.stc_match_ohm > 1.6);
    CHECK(tired.best_ohm / tired.stc_match_ohm ==
          doctest::Approx(label.best_ohm / label.stc_match_ohm).epsilon(0.02));
}

TEST_CASE("wire of a resistance above the best one is reported") {
    Circuit circuit = pair_circuit();
    circuit.runs.front().run.length_m = 5000.0;
    const Season season = winter_season(circuit);
    CHECK(season.stc_match_ohm == 0.0);
    CHECK(contains(season.best_ohm_sentence(), "The wire alone has more resistance"));
    CHECK(season.stc_match_kwh == 0.0);
    CHECK(season.stc_match_loss_sentence().empty());
}

TEST_CASE("weather without months counts whole") {
    const std::vector<double> sun(48, 300.0);
    const std::vector<double> cells(sun.size(), 10.0);
    const SeasonWeather season =
        season_weather(heatmatch::weather_from_plane(sun, cells, 1.0), winter);
    CHECK(season.days == doctest::Approx(2.0));
    CHECK(season.months.empty());
    REQUIRE(season.remarks.size() == 1);
    CHECK(contains(season.remarks.front(), "have no months"));
}

TEST_CASE("a month of polar night has no heat and is not an error") {
    std::vector<double> sun;
    std::vector<std::uint8_t> month;
    for (int row = 0; row < 48; ++row) {
        sun.push_back(row < 24 ? 0.0 : 200.0);
        month.push_back(row < 24 ? 12 : 2);
    }
    const std::vector<double> cells(sun.size(), -20.0);
    const SeasonWeather weather = season_weather(
        heatmatch::weather_from_plane(sun, cells, 1.0, month), std::vector<int>{12, 2});
    const Circuit circuit = pair_circuit();
    const Season season =
        season_of(circuit, season_curves(circuit.panel, weather), weather, std::nullopt);
    CHECK(season.kwh_per_day[11] == 0.0);
    CHECK(season.kwh_per_day[1] > 0.0);
    CHECK(season.kwh > 0.0);
}
