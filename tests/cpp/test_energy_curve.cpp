#include "greensboro.hpp"
#include "reference_diode.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/solar/energy_curve.hpp"

using heatmatch::EnergyCurve;
using heatmatch::exact_kwh;
using heatmatch::SingleDiode;
using heatmatch::weather_nodes;
using heatmatch::WeatherNodes;

namespace {

constexpr double noct_c = 45.0;  // the year holds cell temperatures: it does not count

const WeatherNodes& condensed() {
    static const WeatherNodes nodes = weather_nodes(greensboro());
    return nodes;
}

struct CurveCase {
    SingleDiode diode{};
    double stc_match_ohm = 1.0;
    EnergyCurve curve{};
};

/// The three modules of the reference with their curves over the condensed year.
const std::vector<CurveCase>& cases() {
    static const std::vector<CurveCase> all = [] {
        std::vector<CurveCase> found;
        std::string before;
        for (const ReferenceRow& row : read_reference("energy_open.csv")) {
            if (row.at("module") == before) continue;
            before = row.at("module");
            const double noon = number(row, "vmp_V") / number(row, "imp_A");
            const SingleDiode diode = diode_of(row);
            found.push_back({diode, noon, EnergyCurve(diode, noct_c, condensed(), noon)});
        }
        return found;
    }();
    return all;
}

/// Energy over the condensed year, node by node [kWh].
double node_sum(const CurveCase& one, double ohm) {
    double sum = 0.0;
    for (std::size_t k = 0; k < condensed().size(); ++k) {
        const auto at = one.diode.at(condensed().irradiance_w_m2[k], condensed().base_c[k]);
        sum += condensed().hours[k] * at.into_resistance(ohm).power_w / 1000.0;
    }
    return sum;
}

}  // namespace

// Source: pvlib; tests/reference/energy_open.csv tells how the rows were made.
TEST_CASE("a year's energy agrees with pvlib: exact sum to 1e-9, curve to 5e-4") {
    for (const ReferenceRow& row : read_reference("energy_open.csv")) {
        CAPTURE(row.at("case"));
        const SingleDiode diode = diode_of(row);
        const double ohm = number(row, "R_load_ohm");
        const double noon = number(row, "vmp_V") / number(row, "imp_A");
        const double truth = number(row, "E_kWh_per_year");
        const EnergyCurve curve(diode, noct_c, condensed(), noon);
        const double exact = exact_kwh(diode, noct_c, greensboro(), ohm);
        CHECK(exact == doctest::Approx(truth).epsilon(1e-9));
        CHECK(curve.largest(ohm).power_w == doctest::Approx(number(row, "P_max_W")).epsilon(1e-6));
        CHECK(curve.mpp_kwh() == doctest::Approx(number(row, "E_mpp_kWh_per_year")).epsilon(5e-4));
        if (ohm < 0.3 * noon || ohm > 6.0 * noon) continue;
        CHECK(curve.delivered_kwh(ohm) == doctest::Approx(truth).epsilon(5e-4));
    }
}

TEST_CASE("the curve stays within 5e-4 of the exact sum from 0.3 to 6 times the noon match") {
    double worst = 0.0;
    for (const CurveCase& one : cases()) {
        for (double ratio = 0.3; ratio < 6.0; ratio *= 1.07) {
            const double ohm = ratio * one.stc_match_ohm;
            const double exact = exact_kwh(one.diode, noct_c, greensboro(), ohm);
            worst = std::max(worst, std::fabs(one.curve.delivered_kwh(ohm) / exact - 1.0));
        }
    }
    CHECK(worst < 5e-4);
}

TEST_CASE("between the points of its grid the curve follows its nodes to 5e-5") {
    double worst = 0.0;
    for (const CurveCase& one : cases()) {
        for (double ratio = 0.11; ratio < 29.0; ratio *= 1.037) {
            const double ohm = ratio * one.stc_match_ohm;
            double sum = 0.0;
            for (std::size_t k = 0; k < condensed().size(); ++k) {
                const auto at = one.diode.at(condensed().irradiance_w_m2[k], condensed().base_c[k]);
                sum += condensed().hours[k] * at.into_resistance(ohm).power_w / 1000.0;
            }
            worst = std::max(worst, std::fabs(one.curve.delivered_kwh(ohm) / sum - 1.0));
        }
    }
    CHECK(worst < 5e-5);
}

TEST_CASE("energy has one peak, stays below the maximum power point, and fades at both ends") {
    for (const CurveCase& one : cases()) {
        const double best = one.curve.best_resistance_ohm();
        const double most = one.curve.delivered_kwh(best);
        CHECK(best > one.stc_match_ohm);
        CHECK(best < 3.0 * one.stc_match_ohm);
        CHECK(most < one.curve.mpp_kwh());
        double before = 0.0;
        for (double ratio = 0.02; ratio < 100.0; ratio *= 1.02) {
            const double ohm = ratio * one.stc_match_ohm;
            const double kwh = one.curve.delivered_kwh(ohm);
            CHECK(kwh <= most * (1.0 + 1e-12));
            if (ohm < best) CHECK(kwh > before);
            if (ohm > best * 1.02) CHECK(kwh < before);
            before = kwh;
        }
        CHECK(one.curve.delivered_kwh(0.0) == 0.0);
        CHECK(one.curve.delivered_kwh(1e9) < 1e-3 * most);
        CHECK(std::fabs(one.curve.slope_kwh(best)) < 1e-6 * most);
    }
}

TEST_CASE("the slope is the derivative by ln R") {
    for (const CurveCase& one : cases()) {
        for (double ratio : {0.05, 0.2, 0.7, 1.3, 2.9, 11.0, 28.0, 50.0}) {
            const double ohm = ratio * one.stc_match_ohm;
            const double step = 1e-5;
            const double numeric = (one.curve.delivered_kwh(ohm * std::exp(step)) -
                                    one.curve.delivered_kwh(ohm * std::exp(-step))) /
                                   (2.0 * step);
            CHECK(one.curve.slope_kwh(ohm) ==
                  doctest::Approx(numeric).epsilon(1e-6).scale(one.curve.mpp_kwh()));
        }
    }
}

TEST_CASE("wire resistance needs no separate curve") {
    const CurveCase& one = cases().front();
    const double wire = 0.4;
    SingleDiode with_wire = one.diode;
    with_wire.series_resistance_ohm += wire;
    const EnergyCurve own(with_wire, noct_c, condensed(), one.stc_match_ohm);
    for (double ratio : {0.4, 1.0, 2.0, 5.0}) {
        const double ohm = ratio * one.stc_match_ohm;
        CHECK(one.curve.delivered_kwh(ohm, wire) ==
              doctest::Approx(own.delivered_kwh(ohm)).epsilon(5e-5));
    }
    CHECK(one.curve.best_resistance_ohm(wire) ==
          doctest::Approx(own.best_resistance_ohm()).epsilon(1e-3));
}

TEST_CASE("the year's largest power, voltage and current are those of its rows") {
    for (const CurveCase& one : cases()) {
        for (double ratio : {0.3, 0.8, 1.0, 1.5, 4.0}) {
            const double ohm = ratio * one.stc_match_ohm;
            double power = 0.0;
            double voltage = 0.0;
            for (std::size_t row = 0; row < greensboro().size(); ++row) {
                const auto point =
                    one.diode.at(greensboro().irradiance_w_m2[row], greensboro().base_c[row])
                        .into_resistance(ohm);
                power = std::max(power, point.power_w);
                voltage = std::max(voltage, point.voltage_v);
            }
            CHECK(one.curve.largest(ohm).power_w == doctest::Approx(power).epsilon(1e-9));
            CHECK(one.curve.largest(ohm).voltage_v == doctest::Approx(voltage).epsilon(1e-9));
        }
    }
}

TEST_CASE("hours above a power, and near short circuit, are shares of the sunlit hours") {
    const CurveCase& one = cases().front();
    const EnergyCurve hourly(one.diode, noct_c, weather_nodes(greensboro(), {.exact = true}),
                             one.stc_match_ohm);
    double hours = 0.0;
    double sunlit = 0.0;
    for (std::size_t row = 0; row < greensboro().size(); ++row) {
        if (greensboro().irradiance_w_m2[row] <= 0.0) continue;
        sunlit += 1.0;
        const auto point = one.diode.at(greensboro().irradiance_w_m2[row], greensboro().base_c[row])
                               .into_resistance(one.stc_match_ohm);
        if (point.power_w > 100.0) hours += 1.0;
    }
    CHECK(hourly.hours_above(one.stc_match_ohm, 100.0) == doctest::Approx(hours));
    CHECK(one.curve.hours_above(one.stc_match_ohm, 100.0) == doctest::Approx(hours).epsilon(0.05));
    CHECK(hourly.hours_above(one.stc_match_ohm, 0.0) == doctest::Approx(sunlit));
    for (double ratio : {0.7, 1.0, 1.4, 2.0, 3.0}) {
        const double ohm = ratio * one.stc_match_ohm;
        CHECK(std::fabs(one.curve.near_short_circuit_share(ohm) -
                        hourly.near_short_circuit_share(ohm)) < 0.03);
    }
    CHECK(one.curve.near_short_circuit_share(1e-6) == doctest::Approx(1.0));
    CHECK(one.curve.near_short_circuit_share(1e6) == doctest::Approx(0.0));
    CHECK(one.curve.near_short_circuit_share(0.5 * one.stc_match_ohm) >
          one.curve.near_short_circuit_share(one.stc_match_ohm));
}

// Source: the definition, row by row: below half its open volts a panel is all but shorted.
TEST_CASE(
    "near short circuit is below half of the open-circuit voltage, and the brightest row "
    "is found") {
    const CurveCase& one = cases().front();
    std::vector<double> sun{80.0, 950.0, 300.0, 600.0};
    for (std::size_t turn = 0; turn < sun.size(); ++turn) {
        std::rotate(sun.begin(), sun.begin() + 1, sun.end());
        const std::vector<double> cells(sun.size(), 40.0);
        const EnergyCurve curve(
            one.diode, noct_c,
            weather_nodes(heatmatch::weather_from_plane(sun, cells, 1.0), {.exact = true}),
            one.stc_match_ohm);
        for (const double ratio : {0.3, 0.48, 0.7, 0.85, 1.5, 3.0}) {
            const double ohm = ratio * one.stc_match_ohm;
            double near = 0.0;
            for (const double light : sun) {
                const auto at = one.diode.at(light, 40.0);
                const double volts = at.into_resistance(ohm).voltage_v;
                if (volts / at.open_circuit_voltage_v() < 0.5) near += 0.25;
            }
            CHECK(curve.near_short_circuit_share(ohm) == doctest::Approx(near));
            const auto noon = one.diode.at(950.0, 40.0).into_resistance(ohm);
            CHECK(curve.largest(ohm).power_w == doctest::Approx(noon.power_w));
            CHECK(curve.largest(ohm).voltage_v == doctest::Approx(noon.voltage_v));
            CHECK(curve.largest(ohm).current_a == doctest::Approx(noon.current_a));
        }
    }
}

TEST_CASE("far beyond its grid the curve stays near its nodes") {
    double worst = 0.0;
    for (const CurveCase& one : cases()) {
        for (double ratio : {0.001, 0.01, 0.05, 0.1, 30.0, 60.0, 100.0, 300.0, 2000.0}) {
            const double ohm = ratio * one.stc_match_ohm;
            const double sum = node_sum(one, ohm);
            worst = std::max(worst, std::fabs(one.curve.delivered_kwh(ohm) / sum - 1.0));
        }
    }
    CHECK(worst < 0.05);
}

TEST_CASE("weather that is never bright has a higher best resistance, which is found") {
    const CurveCase& one = cases().front();
    for (double brightest : {15.0, 40.0, 100.0, 300.0}) {
        std::vector<double> sun;
        for (int row = 0; row < 240; ++row) sun.push_back(brightest * (row % 24) / 23.0);
        const std::vector<double> cells(sun.size(), -5.0);
        const heatmatch::Weather dull = heatmatch::weather_from_plane(sun, cells, 1.0);
        const EnergyCurve curve(one.diode, noct_c, weather_nodes(dull, {.exact = true}),
                                one.stc_match_ohm);
        CAPTURE(brightest);
        const double best = curve.best_resistance_ohm();
        const double most = exact_kwh(one.diode, noct_c, dull, best);
        CHECK(most < curve.mpp_kwh());
        CHECK(most > exact_kwh(one.diode, noct_c, dull, 0.9 * best));
        CHECK(most > exact_kwh(one.diode, noct_c, dull, 1.1 * best));
        for (double ratio : {0.1, 1.0, 10.0, 100.0}) {
            const double exact = exact_kwh(one.diode, noct_c, dull, ratio * one.stc_match_ohm);
            CHECK(curve.delivered_kwh(ratio * one.stc_match_ohm) ==
                  doctest::Approx(exact).epsilon(0.01));
        }
    }
}

TEST_CASE("a negative resistance is refused") {
    CHECK_THROWS_WITH(static_cast<void>(cases().front().curve.delivered_kwh(-1.0)),
                      doctest::Contains("resistance_ohm = -1 ohm"));
}

TEST_CASE("an impossible grid is refused") {
    const CurveCase& one = cases().front();
    for (double noon : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
        CHECK_THROWS_WITH(EnergyCurve(one.diode, noct_c, condensed(), noon),
                          doctest::Contains("stc_match_ohm"));
    }
    CHECK_THROWS_WITH(
        EnergyCurve(one.diode, noct_c, condensed(), 4.0, heatmatch::VectorWidth::automatic, 1),
        doctest::Contains("points = 1"));
    CHECK(one.curve.delivered_kwh(HUGE_VAL, 1.0) == 0.0);
}
