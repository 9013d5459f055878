#include "heatmatch/operation/days/day.hpp"

#include "day_life.hpp"

#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

void check(const char* field, double value, double low, double high, const char* unit,
           const char* remedy) {
    if (value >= low && value <= high) return;
    throw InvalidInput({.part = "days",
                        .field = field,
                        .value = format_number(value) + unit,
                        .allowed = format_number(low) + unit + " to " + format_number(high) + unit,
                        .remedy = remedy});
}

void check_options(const DayOptions& options) {
    check("electrical_step_s", options.electrical_step_s, 1.0, 3600.0, " s", "60 s is fine enough");
    check("thermal_step_s", options.thermal_step_s, 1.0, 3600.0, " s", "300 s is fine enough");
    check("warm_up_days", options.warm_up_days, 0.0, 60.0, "", "three days fill most stores");
    if (options.start_c) {
        check("start_c", *options.start_c, -60.0, 1000.0, " °C", "give the store's mean");
    }
    if (options.air_around_c) {
        check("air_around_c", *options.air_around_c, -60.0, 80.0, " °C", "give it in °C");
    }
    check("take_off.w_k", options.take_off.w_k, 0.0, 1e4, " W/K",
          "a small fan through a pipe takes 5 to 20 W/K");
    check("take_off.from_hour", options.take_off.from_hour, 0.0, 24.0, " h", "0 is midnight");
    check("take_off.until_hour", options.take_off.until_hour, 0.0, 24.0, " h", "24 is midnight");
}

void check_store(const Candidate& candidate) {
    const auto& heat = candidate.circuit.heat;
    const auto refuse = [&candidate](const char* field, const std::string& value,
                                     const char* remedy) {
        throw InvalidInput({.part = candidate.circuit.title(),
                            .field = field,
                            .value = value,
                            .allowed = "known",
                            .remedy = remedy});
    };
    if (!heat) refuse("store", "(missing)", "describe the store of the installation");
    if (!heat->missing.empty()) {
        std::string names;
        for (const std::string& name : heat->missing) names += (names.empty() ? "" : ", ") + name;
        refuse("store and element", "without " + names, "measure vessel and element");
    }
    if (!heat->misfit.empty()) {
        refuse("legs in the store", heat->misfit.text(), "choose a larger vessel or shorter legs");
    }
}

}  // namespace

double DayRun::hour_of_day(std::size_t step) const {
    constexpr double hours_of_day = 24.0;
    return std::fmod(first_hour + series.hours[step], hours_of_day);
}

DayRun simulate_day(const Candidate& candidate, const DayWeather& weather,
                    const DayOptions& options) {
    check_options(options);
    check_store(candidate);
    if (weather.size() == 0) {
        throw InvalidInput({.part = "days",
                            .field = "weather",
                            .value = "no rows",
                            .allowed = "at least one row",
                            .remedy = "give sun and air of a day or more"});
    }
    DayRun run = DayLife(candidate, weather, options).run();
    for (const RunParts& parts : candidate.circuit.runs) {
        const auto& air_c = parts.run.surroundings.air_c;
        if (parts.run.carries == "array" || !air_c) continue;
        run.remarks.push_back("The wire at the element stands in the air that its run states, " +
                              format_quantity(*air_c, unit::celsius, UnitSystem::si) +
                              ", day and night.");
    }
    return run;
}

DayRun simulate_day(const Candidate& candidate, const Weather& weather, const DayOptions& options) {
    return simulate_day(candidate, day_weather(weather, options.span), options);
}

}  // namespace heatmatch
