#include "heatmatch/operation/days/day.hpp"

#include "day_life.hpp"
#include "sentences.hpp"

#include <cmath>
#include <string>
#include <vector>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/group_weather.hpp"

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

namespace {

void check_together(std::span<const Candidate> circuits) {
    const FilledStore& first = *circuits.front().circuit.heat->store;
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        const Candidate& candidate = circuits[i];
        const FilledStore& filled = *candidate.circuit.heat->store;
        const std::size_t shares = filled.other_circuits() + 1;
        const bool in_turn = circuits.size() == 1 || filled.circuits_before() == i;
        if (shares == circuits.size() && in_turn && filled.store == first.store) continue;
        throw InvalidInput({.part = candidate.circuit.title(),
                            .field = "store",
                            .value = "shared by " + std::to_string(shares) + " circuits",
                            .allowed = std::to_string(circuits.size()) + " circuits",
                            .remedy = say<"days.all_circuits">()});
    }
}

void check_weathers(std::span<const DayWeather> weathers, std::size_t circuits) {
    const auto refuse = [](const std::string& value, const char* allowed) {
        throw InvalidInput({.part = "days",
                            .field = "weather",
                            .value = value,
                            .allowed = allowed,
                            .remedy = say<"days.give_weather">()});
    };
    if (weathers.empty() || weathers.front().size() == 0) refuse("no rows", "at least one row");
    if (weathers.size() != 1 && weathers.size() != circuits) {
        refuse(std::to_string(weathers.size()) + " weathers", "one, or one for each circuit");
    }
    for (const DayWeather& weather : weathers) {
        const auto same_rows = [&weathers](const DayWeather& other) {
            return other.size() == weathers.front().size() &&
                   other.step_h == weathers.front().step_h;
        };
        if (same_rows(weather) &&
            std::all_of(weather.groups.begin(), weather.groups.end(), same_rows)) {
            continue;
        }
        refuse(std::to_string(weather.size()) + " rows", "the same rows for each circuit");
    }
}

/// A weather by groups has one for each group of its circuit.
void check_groups(std::span<const Candidate> circuits, std::span<const DayWeather> weathers) {
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        const DayWeather& weather = weathers[weathers.size() == 1 ? 0 : i];
        const auto& unlike = circuits[i].circuit.unlike;
        const std::size_t groups = unlike ? unlike->groups.size() : 0;
        if (weather.groups.empty() || weather.groups.size() == groups) continue;
        throw InvalidInput({.part = "days",
                            .field = "weather",
                            .value = std::to_string(weather.groups.size()) + " groups",
                            .allowed = std::to_string(groups) + " groups",
                            .remedy = say<"days.give_weather">()});
    }
}

}  // namespace

std::vector<DayRun> simulate_circuits(std::span<const Candidate> circuits,
                                      std::span<const DayWeather> weathers,
                                      const DayOptions& options) {
    check_options(options);
    std::vector<const Candidate*> lived;
    for (const Candidate& candidate : circuits) {
        check_circuit(candidate.circuit, candidate.site);
        check_store(candidate);
        lived.push_back(&candidate);
    }
    if (lived.empty()) return {};
    check_together(circuits);
    check_weathers(weathers, circuits.size());
    check_groups(circuits, weathers);
    std::vector<DayRun> runs = DayLife(lived, weathers, options).runs();
    for (std::size_t i = 0; i < runs.size(); ++i) {
        for (const RunParts& parts : circuits[i].circuit.runs) {
            const auto& air_c = parts.run.surroundings.air_c;
            if (parts.run.carries == Carried::array || !air_c) continue;
            runs[i].remarks.push_back(say<"days.wire_air">(with<"air">(*air_c, unit::celsius, 4)));
        }
    }
    return runs;
}

DayRun simulate_day(const Candidate& candidate, const DayWeather& weather,
                    const DayOptions& options) {
    return simulate_circuits({&candidate, 1}, {&weather, 1}, options).front();
}

std::vector<DayRun> simulate_circuits(std::span<const Candidate> circuits, const Weather& weather,
                                      const DayOptions& options) {
    std::vector<DayWeather> lived_in;
    for (const Candidate& candidate : circuits) {
        const auto of_group = [&](const OwnedPanels& owned) {
            const auto own = group_weather(weather, owned, candidate.site, true);
            return day_weather(own ? *own : weather, options.span);
        };
        if (!candidate.circuit.unlike) {
            lived_in.push_back(of_group(candidate.circuit.owned));
            continue;
        }
        lived_in.push_back(day_weather(weather, options.span));
        for (const GroupInArray& group : candidate.circuit.unlike->groups) {
            lived_in.back().groups.push_back(of_group(group.owned));
        }
    }
    return simulate_circuits(circuits, lived_in, options);
}

DayRun simulate_day(const Candidate& candidate, const Weather& weather, const DayOptions& options) {
    return simulate_circuits({&candidate, 1}, weather, options).front();
}

}  // namespace heatmatch
