#include "day_sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double hours_of_day = 24.0;

std::string clock(double hour) {
    const auto minutes = static_cast<int>(std::lround(hour * 60.0)) % 1440;
    const std::string rest = std::to_string(minutes % 60);
    return std::to_string(minutes / 60) + ':' + (rest.size() < 2 ? "0" + rest : rest);
}

std::string kelvin(double difference_k, UnitSystem system) {
    return format_quantity(std::round(difference_k * 10.0) / 10.0, unit::kelvin, system, 3);
}

std::string kwh(double energy) {
    return format_number(std::round(energy * 100.0) / 100.0, 4) + " kWh";
}

/// What it comes to, first of all.
std::string verdict(const DayAnswer& answer, const Candidate& candidate, const DayRun& run,
                    UnitSystem system) {
    constexpr double all_of_it = 0.98;
    constexpr double part_of_it = 0.25;
    constexpr double hardly_k = 0.3;
    const DarkHours& all = answer.all;
    if (!run.heats_space) {
        return "The store takes " + kwh(all.in_kwh_day) +
               " on the mean day; what it does for a space is not known here.";
    }
    const std::string lift = "On the mean night the store lifts the space by " +
                             kelvin(all.lift_k, system) + " (" +
                             kelvin(answer.dusk_lift_k, system) + " at dusk, " +
                             kelvin(answer.dawn_lift_k, system) + " at dawn)";
    const auto& target_c = candidate.space->target_c;
    if (!target_c) return lift + "; what is wanted is not told (space.target_c).";
    const std::string wanted = format_quantity(*target_c, unit::celsius, system, 3);
    if (all.wanted_k < hardly_k) {
        return lift + "; the nights are hardly below the " + wanted + " wanted.";
    }
    const std::string of =
        ", of the " + kelvin(all.wanted_k, system) + " that " + wanted + " wants in the mean: ";
    const double share = all.lift_k / all.wanted_k;
    if (all.above_target_hours >= all_of_it * all.dark_hours) {
        return lift + of + "it keeps the space there.";
    }
    if (share >= part_of_it) return lift + of + "it carries part of the heating, not all of it.";
    return lift + of + "it takes the edge off; it does not heat the space.";
}

}  // namespace

Sentences day_sentences(const DayAnswer& answer, const Candidate& candidate, const DayRun& run,
                        UnitSystem system) {
    Sentences sentences;
    sentences.push_back(verdict(answer, candidate, run, system));
    const DayEnergy& energy = run.energy;
    const double mean_w = run.days > 0.0 ? energy.in_kwh * 1000.0 / (run.days * hours_of_day) : 0.0;
    std::string heat = "In " + format_number(run.days, 4) + " days " + kwh(energy.in_kwh) +
                       " of the " + kwh(energy.available_kwh) +
                       " that the panels could give reach the elements, as much as a heater of " +
                       format_number(mean_w, 2) + " W left on; ";
    if (run.heats_space) {
        heat += kwh(energy.to_space_kwh) + " reach the space, " + kwh(energy.outside_kwh) +
                " are lost outside it, ";
    } else {
        heat += kwh(energy.outside_kwh) + " leave the store, ";
    }
    heat += kwh(std::fabs(energy.stored_kwh)) +
            (energy.stored_kwh >= 0.0 ? " stay in it." : " came from what it held before.");
    sentences.push_back(heat);
    if (run.heats_space) {
        sentences.push_back(answer.noticed_until_hour
                                ? "By the store alone the space is " + kelvin(noticed_k, system) +
                                      " warmer or more until about " +
                                      clock(*answer.noticed_until_hour) + "."
                                : "By the store alone the space is never " +
                                      kelvin(noticed_k, system) + " warmer in the dark.");
    }
    if (answer.lid_until_hour) {
        sentences.push_back("Its lid is " + kelvin(warm_lid_k, system) +
                            " above the air around it or more until about " +
                            clock(*answer.lid_until_hour) + ".");
    }
    if (answer.carry_over_h) {
        sentences.push_back("It gives at least half of the night's largest heat for " +
                            format_number(*answer.carry_over_h, 3) + " h after dusk.");
    }
    for (const PartPeak& peak : answer.peaks) {
        if (peak.margin.severity != Severity::danger && peak.margin.severity != Severity::warning) {
            continue;
        }
        sentences.push_back(std::string(severity_name(peak.margin.severity)) + ": " +
                            peak.margin.sentence(system));
    }
    const auto opened =
        std::count_if(run.events.begin(), run.events.end(),
                      [](const SwitchEvent& event) { return event.what == "opens"; });
    if (opened > 0) {
        sentences.push_back("Thermostat or limit opened " + std::to_string(opened) +
                            (opened == 1 ? " time." : " times."));
    }
    for (const SwitchEvent& event : run.events) {
        if (event.what != "cannot open") continue;
        sentences.push_back("danger: \"" + event.device + "\" should have opened and could not.");
    }
    return sentences;
}

}  // namespace heatmatch
