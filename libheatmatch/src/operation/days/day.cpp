#include "heatmatch/operation/days/day.hpp"

#include "day_life.hpp"
#include "sentences.hpp"

#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

void check(const char* field, double value, double low, double high, const char* unit,
           Sentence remedy) {
    if (value >= low && value <= high) return;
    throw InvalidInput({.part = "days",
                        .field = field,
                        .value = format_number(value) + unit,
                        .allowed = format_number(low) + unit + " to " + format_number(high) + unit,
                        .remedy = std::move(remedy)});
}

void check_options(const DayOptions& options) {
    check("electrical_step_s", options.electrical_step_s, 1.0, 3600.0, " s",
          say<"days.fine_step">(with<"seconds">(60.0)));
    check("thermal_step_s", options.thermal_step_s, 1.0, 3600.0, " s",
          say<"days.fine_step">(with<"seconds">(300.0)));
    check("warm_up_days", options.warm_up_days, 0.0, 60.0, "", say<"days.warm_up">());
    if (options.start_c) {
        check("start_c", *options.start_c, -60.0, 1000.0, " °C", say<"days.start_at_mean">());
    }
    if (options.air_around_c) {
        check("air_around_c", *options.air_around_c, -60.0, 80.0, " °C", say<"days.in_celsius">());
    }
    check("extraction.w_k", options.extraction.w_k, 0.0, 1e4, " W/K",
          say<"days.fan_takes">(
              with<"low">(
                  Amount{.value = 5.0, .unit = unit::watt_per_kelvin, .shown = Shown::number}),
              with<"high">(20.0, unit::watt_per_kelvin)));
    check("extraction.from_hour", options.extraction.from_hour, 0.0, 24.0, " h",
          say<"days.midnight">(with<"hour">(0.0)));
    check("extraction.until_hour", options.extraction.until_hour, 0.0, 24.0, " h",
          say<"days.midnight">(with<"hour">(24.0)));
}

void check_store(const Candidate& candidate) {
    const auto& heat = candidate.circuit.heat;
    const auto refuse = [&candidate](const char* field, const std::string& value, Sentence remedy) {
        throw InvalidInput({.part = candidate.circuit.title(),
                            .field = field,
                            .value = value,
                            .allowed = "known",
                            .remedy = std::move(remedy)});
    };
    if (!heat) refuse("store", "(missing)", say<"days.describe_store">());
    if (!heat->missing.empty()) {
        std::string names;
        for (const std::string& name : heat->missing) names += (names.empty() ? "" : ", ") + name;
        refuse("store and element", "without " + names, say<"days.measure_store">());
    }
    if (!heat->misfit.empty()) {
        refuse("legs in the store", heat->misfit.text(), say<"days.fit_legs">());
    }
}

}  // namespace

double DayRun::hour_of_day(std::size_t step) const {
    return std::fmod(first_hour + series.hours[step], hours_of_day);
}

DayRun simulate_day(const Candidate& candidate, const DayWeather& weather,
                    const DayOptions& options) {
    check_options(options);
    check_circuit(candidate.circuit, candidate.site);
    check_store(candidate);
    if (weather.size() == 0) {
        throw InvalidInput({.part = "days",
                            .field = "weather",
                            .value = "no rows",
                            .allowed = "at least one row",
                            .remedy = say<"days.give_weather">()});
    }
    DayRun run = DayLife(candidate, weather, options).run();
    for (const RunParts& parts : candidate.circuit.runs) {
        const auto& air_c = parts.run.surroundings.air_c;
        if (parts.run.carries == Carried::array || !air_c) continue;
        run.remarks.push_back(say<"days.wire_air">(with<"air">(*air_c, unit::celsius, 4)));
    }
    return run;
}

DayRun simulate_day(const Candidate& candidate, const Weather& weather, const DayOptions& options) {
    return simulate_day(candidate, day_weather(weather, options.span), options);
}

}  // namespace heatmatch
