#include "refusal.hpp"
#include "synthetic_readings.hpp"
#include "temp_folder.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

#include "heatmatch/operation/meter/readings.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::check_readings;
using heatmatch::InvalidInput;
using heatmatch::read_readings_csv;
using heatmatch::Reading;
using heatmatch::Readings;

namespace {

/// A day of twenty-minute rows of the sound pair, without noise.
Readings sunny_day() {
    NoisyMeters exact(1, 0.0);
    const RealCircuit real = sound_circuit(bench_pair().circuit);
    Readings readings;
    for (int i = 0; i <= 30; ++i) {
        const double sun = 900.0 * std::sin(3.14159 * i / 30.0) + 1.0;
        Reading row = noisy_reading(real, sun, 12.0 + 0.03 * sun, 12.0, {}, exact);
        row.unix_time_s = 1.7e9 + 1200.0 * i;
        row.sheath_c = 30.0 + 8.0 * i;
        row.store_c = 25.0 + i;
        readings.rows.push_back(row);
    }
    return readings;
}

std::string readings_refusal(const Readings& readings) {
    return refusal_of<InvalidInput>(
        [&] { static_cast<void>(check_readings(readings, bench_pair())); });
}

template <class Change>
Readings changed(Change change) {
    Readings readings = sunny_day();
    for (Reading& row : readings.rows) change(row);
    return readings;
}

bool remarked(const Readings& readings, const std::string& piece) {
    return std::any_of(readings.remarks.begin(), readings.remarks.end(),
                       [&](const heatmatch::Sentence& remark) { return contains(remark, piece); });
}

}  // namespace

TEST_CASE("readings come from CSV in any unit that is written down") {
    const Readings readings = read_readings_csv(
        "unix_time_s,bank_v,bank_a,panel_temperature_c,irradiance_w_m2,element_ohm\n"
        "1700000000,41.5,5 A,104 °F,0.6 kW/m2,57.6\n"
        "1700000600,41800 mV,4900 mA,,612,OL\n"
        "\n"
        "1700001200,nan,4.7,open,590,\n");
    REQUIRE(readings.rows.size() == 3);
    CHECK(readings.rows[0].bank_v == 41.5);
    CHECK(readings.rows[0].bank_a == 5.0);
    CHECK(within(*readings.rows[0].panel_temperature_c, 40.0, 1e-9));
    CHECK(within(*readings.rows[0].irradiance_w_m2, 600.0, 1e-12));
    CHECK(within(*readings.rows[1].bank_v, 41.8, 1e-12));
    CHECK(within(*readings.rows[1].bank_a, 4.9, 1e-12));
    CHECK(!readings.rows[1].panel_temperature_c);
    CHECK(std::isinf(*readings.rows[1].element_ohm));
    CHECK(std::isnan(*readings.rows[2].bank_v));
    CHECK(std::isnan(*readings.rows[2].panel_temperature_c));
    CHECK(!readings.rows[2].element_ohm);
}

TEST_CASE("readings come from a file too") {
    const TempFolder folder;
    const std::string path = folder.file("log.csv");
    heatmatch::write_text_file(path, "bank_v,bank_a\n36.5,5.1\n");
    CHECK(read_readings_csv(path).rows.front().bank_a == 5.1);
    CHECK(holds(refusal_of<heatmatch::FileError>(
                    [&] { static_cast<void>(read_readings_csv(folder.file("none.csv"))); }),
                "none.csv"));
}

TEST_CASE("a CSV that cannot be read is refused with line, column and remedy") {
    const auto csv = [](const char* text) {
        return refusal_of<InvalidInput>([&] { static_cast<void>(read_readings_csv(text)); });
    };
    CHECK(holds(csv("bank_volt,bank_a\n1,2\n"), "choices: bank_"));
    CHECK(holds(csv("bank_v,bank_v\n1,2\n"), "given once"));
    CHECK(holds(csv("\n"), "header"));
    const std::string wrong_unit = csv("bank_v,bank_a\n36,5\n36,5 ohm\n");
    CHECK(holds(wrong_unit, "line 3"));
    CHECK(holds(wrong_unit, "bank_a"));
    CHECK(holds(csv("bank_v,bank_a\n36,5,7\n"), "at most 2"));
    CHECK(holds(csv("bank_v\n\"36,5\"\n"), "an unambiguous number"));
    CHECK(holds(csv("bank_v\nabout 36\n"), "line 2"));
}

TEST_CASE("sound readings pass unchanged and without a remark") {
    const Readings readings = sunny_day();
    const Readings checked = check_readings(readings, bench_pair());
    CHECK(checked.remarks.empty());
    CHECK(checked.rows == readings.rows);
}

TEST_CASE("times that do not rise are refused with their row") {
    Readings readings = sunny_day();
    std::swap(readings.rows[4].unix_time_s, readings.rows[5].unix_time_s);
    const std::string message = readings_refusal(readings);
    CHECK(holds(message, "row 6"));
    CHECK(holds(message, "sort the rows by time"));
    readings = sunny_day();
    readings.rows[7].unix_time_s = readings.rows[6].unix_time_s;
    CHECK(holds(readings_refusal(readings), "row 8"));
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.unix_time_s *= 1000.0; })),
                "milliseconds"));
    readings = sunny_day();
    readings.rows[2].unix_time_s = std::nan("");
    CHECK(holds(readings_refusal(readings), "row 3"));
}

TEST_CASE("columns in another unit are distinguished from circuits of low power") {
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.bank_v *= 1000.0; })), "bank_v"));
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.open_v *= 1000.0; })),
                "looks like mV"));
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.bank_a *= 1000.0; })),
                "looks like mA"));
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.irradiance_w_m2 /= 1000.0; })),
                "looks like kW/m2"));
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.irradiance_w_m2 /= 10.0; })),
                "percent of 1000 W/m2"));
    const auto fahrenheit = [](std::optional<double>& c) { c = *c * 1.8 + 32.0; };
    CHECK(holds(readings_refusal(changed([&](Reading& row) { fahrenheit(row.air_c); })),
                "looks like °F"));
    CHECK(
        holds(readings_refusal(changed([&](Reading& row) { fahrenheit(row.panel_temperature_c); })),
              "looks like °F"));
    CHECK(holds(readings_refusal(changed([](Reading& row) { *row.bank_a *= -1.0; })), "reversed"));
    // Half the current and volts of a fault are no unit.
    CHECK(readings_refusal(changed([](Reading& row) {
              *row.bank_a *= 0.3;
              *row.bank_v *= 0.3;
              *row.short_a *= 0.3;
          })) == "(accepted)");
    // Two panels in parallel that should be in series give half the volts, twice the amperes.
    CHECK(readings_refusal(changed([](Reading& row) {
              *row.open_v *= 0.5;
              *row.short_a *= 2.0;
          })) == "(accepted)");
}

TEST_CASE("percent of the sun without any current is a remark, because light may be dim") {
    const Readings checked = check_readings(changed([](Reading& row) {
                                                *row.irradiance_w_m2 /= 10.0;
                                                row.bank_a.reset();
                                                row.short_a.reset();
                                            }),
                                            bench_pair());
    CHECK(remarked(checked, "percent of full sun"));
    CHECK(checked.rows[15].irradiance_w_m2.has_value());
}

TEST_CASE("failed readings and open thermocouples are omitted and counted") {
    Readings readings = sunny_day();
    readings.rows[3].bank_v = std::nan("");
    readings.rows[4].bank_v = std::nan("");
    readings.rows[5].sheath_c = 2000.0;
    readings.rows[6].sheath_c = -200.0;
    readings.rows[7].store_c = std::nan("");
    readings.rows[8].element_ohm = std::numeric_limits<double>::infinity();
    readings.rows[9].bank_a = 900.0;
    readings.rows[0].bank_a = -0.02;
    const Readings checked = check_readings(readings, bench_pair());
    CHECK(remarked(checked, "2 values of bank_v left out"));
    CHECK(remarked(checked, "2 values of sheath_c left out: an open thermocouple"));
    CHECK(remarked(checked, "1 value of store_c left out"));
    CHECK(remarked(checked, "1 value of bank_a left out"));
    CHECK(remarked(checked, "1 value of bank_a a little below 0"));
    CHECK(!checked.rows[3].bank_v);
    CHECK(!checked.rows[5].sheath_c);
    CHECK(!checked.rows[9].bank_a);
    CHECK(checked.rows[0].bank_a == 0.0);
    CHECK(std::isinf(*checked.rows[8].element_ohm));
    CHECK(checked.rows[10] == readings.rows[10]);
}

TEST_CASE("a thermocouple that is constant while the power changes is omitted") {
    Readings readings = sunny_day();
    for (std::size_t i = 10; i < 26; ++i) readings.rows[i].sheath_c = 111.0;
    const Readings checked = check_readings(readings, bench_pair());
    CHECK(remarked(checked, "16 values of sheath_c left out: stuck"));
    CHECK(!checked.rows[12].sheath_c);
    CHECK(checked.rows[9].sheath_c == readings.rows[9].sheath_c);
    // Six alike rows, or a slow store, are no fault.
    readings = sunny_day();
    for (std::size_t i = 10; i < 16; ++i) readings.rows[i].sheath_c = 111.0;
    for (std::size_t i = 10; i < 26; ++i) readings.rows[i].store_c = 31.0;
    CHECK(check_readings(readings, bench_pair()).remarks.empty());
}

// Source: how meters show what is beyond them: OL; only of ohms that is a reading.
TEST_CASE("beyond its range a meter reads an open circuit for resistance, and fails otherwise") {
    for (const char* word : {"OL", "O.L", "0L", "inf", "over"}) {
        CAPTURE(std::string(word));
        const auto row =
            read_readings_csv("bank_v,bank_a,sheath_c,element_ohm,bank_ohm\n" + std::string(word) +
                              ',' + word + ',' + word + ',' + word + ',' + word + '\n')
                .rows.front();
        CHECK(std::isnan(*row.bank_v));
        CHECK(std::isnan(*row.bank_a));
        CHECK(std::isnan(*row.sheath_c));
        CHECK(std::isinf(*row.element_ohm));
        CHECK(std::isinf(*row.bank_ohm));
    }
    const auto failed = read_readings_csv("bank_v,element_ohm\nopen,open\nfault,fault\n");
    CHECK(std::isnan(*failed.rows[0].bank_v));
    CHECK(std::isinf(*failed.rows[0].element_ohm));
    CHECK(std::isnan(*failed.rows[1].element_ohm));
}

// Source: by hand: three strings put in series by mistake give three times the volts, three panels
// side by side three times the amperes; 1.4 times either is more than a cloud's edge adds.
TEST_CASE("a value of any hook-up of the panels is a reading, and outliers beyond are omitted") {
    const auto strings =
        bench_candidate("silicon-60-cell-245", {1, 3}, "tubular-1000-120", {1, 2}, 9.0);
    const auto row_of =
        bench_candidate("silicon-60-cell-245", {3, 1}, "tubular-1000-120", {1, 2}, 9.0);
    const double volts = strings.circuit.cold_voltage_v();
    const double amperes = row_of.circuit.short_circuit_current_a();
    for (const std::size_t worst : {0U, 3U, 6U}) {
        CAPTURE(worst);
        const auto kept = [worst](const heatmatch::Candidate& candidate, auto member, double usual,
                                  double odd) {
            Readings readings;
            readings.rows.assign(7, Reading{});
            for (Reading& row : readings.rows) row.*member = usual;
            readings.rows[worst].*member = odd;
            const Readings checked = check_readings(readings, candidate);
            for (std::size_t i = 0; i < 7; ++i) {
                if (i != worst) CHECK(checked.rows[i].*member == usual);
            }
            return (checked.rows[worst].*member).has_value();
        };
        for (auto member : {&Reading::array_v, &Reading::bank_v, &Reading::open_v}) {
            CHECK(kept(strings, member, volts, 4.1 * volts));
            CHECK_FALSE(kept(strings, member, volts, 4.3 * volts));
            CHECK(kept(row_of, member, 3.0 * volts, 4.1 * volts));
            CHECK_FALSE(kept(row_of, member, 3.0 * volts, 4.3 * volts));
        }
        for (auto member : {&Reading::bank_a, &Reading::short_a}) {
            CHECK(kept(row_of, member, amperes, 4.1 * amperes));
            CHECK_FALSE(kept(row_of, member, amperes, 4.3 * amperes));
            CHECK(kept(strings, member, 3.0 * amperes, 4.1 * amperes));
            CHECK_FALSE(kept(strings, member, 3.0 * amperes, 4.3 * amperes));
        }
    }
}

// Source: no panel gets 2 W/m2 at most all day: such a column is kilowatts; one bright row says
// that it is watts, whichever it is.
TEST_CASE("the brightest row determines the unit of the sun, wherever it is") {
    for (const std::size_t brightest : {0U, 2U, 4U}) {
        const auto with_sun = [brightest](double usual, double most) {
            Readings readings;
            readings.rows.assign(5, Reading{});
            for (Reading& row : readings.rows) row.irradiance_w_m2 = usual;
            readings.rows[brightest].irradiance_w_m2 = most;
            return readings_refusal(readings);
        };
        CAPTURE(brightest);
        CHECK(with_sun(1.0, 900.0) == "(accepted)");
        CHECK(holds(with_sun(0.1, 0.9), "looks like kW/m2"));
    }
}
