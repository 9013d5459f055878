#include "sentences.hpp"
#include "stuck_readings.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/operation/meter/readings.hpp"

namespace heatmatch {

using meter_sentences::say;

namespace {

using Member = std::optional<double> Reading::*;

struct ReadColumn {
    Member member = nullptr;
    std::string_view name{};
    double largest = 0.0;  //!< highest value in any hook-up of these panels
    double own = 0.0;      //!< highest value in this hook-up
};

constexpr auto temperatures = std::to_array<ReadColumn>({
    {&Reading::panel_temperature_c, "panel_temperature_c"},
    {&Reading::sheath_c, "sheath_c"},
    {&Reading::store_c, "store_c"},
    {&Reading::air_c, "air_c"},
});
constexpr double lowest_thermocouple_c = -200.0;
constexpr double highest_thermocouple_c = 1200.0;
constexpr double thousand = 1000.0;
constexpr double ten = 10.0;
constexpr int four = 4;  // digits

/// A number whose unit is further on in the sentence.
template <Word Called>
NamedArgument<Called> number_of(double value, const Unit& unit, int digits = 3) {
    return with<Called>(
        Amount{.value = value, .unit = unit, .digits = digits, .shown = Shown::number});
}

[[noreturn]] void refuse(std::string_view field, std::string value, std::string allowed,
                         Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = "readings",
                                   .field = std::string(field),
                                   .value = std::move(value),
                                   .allowed = std::move(allowed),
                                   .remedy = std::move(remedy)});
}

std::vector<double> values_of(const Readings& readings, Member member) {
    std::vector<double> values;
    for (const Reading& row : readings.rows) {
        if (row.*member && std::isfinite(*(row.*member))) values.push_back(*(row.*member));
    }
    return values;
}

/// Median of the values above the noise; empty without any.
std::optional<double> median_of(std::vector<double> values, double nothing) {
    std::erase_if(values, [nothing](double value) { return std::fabs(value) <= nothing; });
    if (values.empty()) return std::nullopt;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Removes the values selected by a test and counts them in a remark.
template <class Test>
void leave_out(Readings& readings, const ReadColumn& column, const Sentence& why, Test test) {
    std::size_t count = 0;
    for (Reading& row : readings.rows) {
        if (!(row.*column.member) || !test(*(row.*column.member))) continue;
        (row.*column.member).reset();
        ++count;
    }
    if (count > 0) readings.remarks.push_back(counted(count, column.name, why));
}

void check_times(const Readings& readings) {
    std::optional<double> before;
    for (std::size_t i = 0; i < readings.rows.size(); ++i) {
        const auto& time = readings.rows[i].unix_time_s;
        if (!time) continue;
        const std::string value = std::to_string(std::llround(std::clamp(
                                      std::isfinite(*time) ? *time : 0.0, -1e17, 1e17))) +
                                  " s in row " + std::to_string(i + 1);
        constexpr double year_5000_s = 1e11;
        if (!std::isfinite(*time)) {
            refuse("unix_time_s", "nan in row " + std::to_string(i + 1), "a number of seconds",
                   say<"readings.remove_row">());
        }
        if (std::fabs(*time) > year_5000_s) {
            refuse("unix_time_s", value, "seconds since 1970",
                   say<"readings.milliseconds">(with<"thousand">(thousand)));
        }
        if (before && *time <= *before) {
            refuse("unix_time_s", value, "later than the previous row",
                   say<"readings.sort_rows">());
        }
        before = *time;
    }
}

void leave_out_failed(Readings& readings) {
    for (const ReadColumn& column : temperatures) {
        leave_out(readings, column, say<"readings.failed">(),
                  [](double value) { return !std::isfinite(value); });
        leave_out(readings, column, say<"readings.open_thermocouple">(), [](double value) {
            return value <= lowest_thermocouple_c || value >= highest_thermocouple_c;
        });
    }
    constexpr auto others =
        std::to_array<ReadColumn>({{&Reading::irradiance_w_m2, "irradiance_w_m2"},
                                   {&Reading::array_v, "array_v"},
                                   {&Reading::bank_v, "bank_v"},
                                   {&Reading::bank_a, "bank_a"},
                                   {&Reading::open_v, "open_v"},
                                   {&Reading::short_a, "short_a"}});
    for (const ReadColumn& column : others) {
        leave_out(readings, column, say<"readings.failed">(),
                  [](double value) { return !std::isfinite(value); });
    }
    constexpr auto ohms = std::to_array<ReadColumn>(
        {{&Reading::element_ohm, "element_ohm"}, {&Reading::bank_ohm, "bank_ohm"}});
    for (const ReadColumn& column : ohms) {
        leave_out(readings, column, say<"readings.failed">(),
                  [](double value) { return std::isnan(value) || value < 0.0; });
    }
}

/// Voltage or current against the highest values of the panels.
void check_column(Readings& readings, const ReadColumn& column, const Unit& unit,
                  const char* milli) {
    const auto median = median_of(values_of(readings, column.member), 0.01 * column.own);
    if (!median) return;
    const std::string shown = "median " + format_quantity(*median, unit, UnitSystem::si);
    constexpr double as_if_milli = 20.0;
    constexpr double beyond = 1.4;  // cloud edges and meters
    if (std::fabs(*median) > std::max(as_if_milli * column.own, beyond * column.largest)) {
        refuse(column.name, shown,
               "at most " + format_quantity(column.largest, unit, UnitSystem::si, four),
               say<"readings.smaller_unit">(with<"unit">(std::string(milli)),
                                            with<"thousand">(thousand)));
    }
    if (*median < 0.0) {
        refuse(column.name, shown, "positive while the sun shines", say<"readings.change_signs">());
    }
    std::size_t zeroed = 0;
    for (Reading& row : readings.rows) {
        auto& value = row.*column.member;
        if (!value || *value >= 0.0 || *value < -0.02 * column.own) continue;
        value = 0.0;
        ++zeroed;
    }
    if (zeroed > 0) {
        readings.remarks.push_back(
            counted(zeroed, column.name, say<"readings.a_little_negative">(with<"nothing">(0.0))));
    }
    leave_out(readings, column, say<"readings.too_much">(with<"most">(column.largest, unit, four)),
              [&](double value) { return value < 0.0 || value > beyond * column.largest; });
}

/// The irradiance column against the irradiance that the current implies.
void check_sun(Readings& readings, double i_sc_a) {
    constexpr ReadColumn sun{&Reading::irradiance_w_m2, "irradiance_w_m2"};
    std::vector<double> ratios;
    for (const Reading& row : readings.rows) {
        const auto& current = row.short_a ? row.short_a : row.bank_a;
        if (!row.irradiance_w_m2 || *row.irradiance_w_m2 <= 0.0 || !current) continue;
        if (*current < 0.02 * i_sc_a) continue;
        ratios.push_back(*current / i_sc_a * 1000.0 / *row.irradiance_w_m2);
    }
    const auto sun_values = values_of(readings, sun.member);
    if (sun_values.empty()) return;
    const double most = *std::max_element(sun_values.begin(), sun_values.end());
    const std::string shown = "at most " + format_number(most, 4);
    const auto ratio = median_of(ratios, 0.0);
    constexpr double kilowatts = 100.0;  // the current of a bank indicates part of the irradiance
                                         // only
    constexpr double percents = 4.5;
    constexpr double bright_kilowatts = 2.0;
    constexpr double bright_percent = 140.0;
    if (most > 0.0 && most <= bright_kilowatts && (!ratio || *ratio > kilowatts)) {
        refuse(
            sun.name, shown, "W/m2",
            say<"readings.larger_unit">(with<"unit">(Name{"kW/m2"}), with<"thousand">(thousand)));
    }
    if (most <= bright_percent && ratio && *ratio > percents) {
        refuse(sun.name, shown, "W/m2",
               say<"readings.percent_of_sun">(with<"full">(1000.0, unit::watt_per_m2),
                                              with<"ten">(ten)));
    }
    if (most > 0.0 && most <= bright_percent && !ratio) {
        readings.remarks.push_back(say<"readings.dim">(
            with<"field">(std::string(sun.name)), number_of<"most">(most, unit::watt_per_m2, four),
            with<"ten">(ten),
            with<"unit">(Amount{.unit = unit::watt_per_m2, .shown = Shown::unit})));
    }
    constexpr double darkest = -20.0;
    constexpr double brightest = 1800.0;
    leave_out(readings, sun,
              say<"readings.not_between">(number_of<"low">(darkest, unit::watt_per_m2),
                                          with<"high">(brightest, unit::watt_per_m2)),
              [](double value) { return value < darkest || value > brightest; });
}

void check_fahrenheit(Readings& readings) {
    struct Highest {
        ReadColumn column;
        double median_c;
        double single_c;
    };
    constexpr auto highest = std::to_array<Highest>({
        {{&Reading::air_c, "air_c"}, 52.0, 60.0},
        {{&Reading::panel_temperature_c, "panel_temperature_c"}, 92.0, 120.0},
    });
    constexpr double coldest_c = -60.0;
    for (const Highest& most : highest) {
        const auto median = median_of(values_of(readings, most.column.member), 0.0);
        if (!median) continue;
        if (*median > most.median_c) {
            const double in_c = (*median - 32.0) / 1.8;
            refuse(most.column.name, "median " + format_number(*median, 4) + " °C",
                   "at most " + format_number(most.median_c) + " °C",
                   say<"readings.fahrenheit_of">(with<"meant">(in_c, unit::celsius)));
        }
        leave_out(readings, most.column,
                  say<"readings.beyond_air">(number_of<"high">(most.single_c, unit::celsius),
                                             with<"low">(coldest_c, unit::celsius)),
                  [&](double value) { return value > most.single_c || value < coldest_c; });
    }
}

/// Panels are never that far above the air: one of the two is in another unit.
void check_rise(const Readings& readings) {
    std::vector<double> rises;
    for (const Reading& row : readings.rows) {
        if (row.panel_temperature_c && row.air_c) {
            rises.push_back(*row.panel_temperature_c - *row.air_c);
        }
    }
    const auto median = median_of(rises, 0.0);
    constexpr double largest_k = 50.0;
    if (!median || *median <= largest_k) return;
    refuse("panel_temperature_c", "median " + format_number(*median, 3) + " K above the air",
           "at most 50 K", say<"readings.fahrenheit">());
}

}  // namespace

Readings check_readings(const Readings& readings, const Candidate& candidate) {
    check_times(readings);
    Readings checked = readings;
    leave_out_failed(checked);
    const Circuit& circuit = candidate.circuit;
    const double own_v = circuit.cold_voltage_v();
    const double own_a = circuit.short_circuit_current_a();
    const double most_v = own_v * circuit.panels.parallel;
    const double most_a = own_a * circuit.panels.series;
    if (own_v > 0.0 && own_a > 0.0) {
        for (const ReadColumn& column : {ReadColumn{&Reading::array_v, "array_v", most_v, own_v},
                                         ReadColumn{&Reading::bank_v, "bank_v", most_v, own_v},
                                         ReadColumn{&Reading::open_v, "open_v", most_v, own_v}}) {
            check_column(checked, column, unit::volt, "mV");
        }
        for (const ReadColumn& column : {ReadColumn{&Reading::bank_a, "bank_a", most_a, own_a},
                                         ReadColumn{&Reading::short_a, "short_a", most_a, own_a}}) {
            check_column(checked, column, unit::ampere, "mA");
        }
        check_sun(checked, own_a);
    }
    check_fahrenheit(checked);
    check_rise(checked);
    leave_out_stuck(checked);
    return checked;
}

}  // namespace heatmatch
