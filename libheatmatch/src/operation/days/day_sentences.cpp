#include "day_sentences.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/setting/target_amount.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

Amount kelvin(double difference_k) {
    return {.value = std::round(difference_k * 10.0) / 10.0, .unit = unit::kelvin};
}

Amount kwh(double energy) {
    return {.value = std::round(energy * 100.0) / 100.0, .unit = unit::kilowatt_hour, .digits = 4};
}

Amount clock(double hour) {
    return {.value = hour, .unit = unit::hour, .shown = Shown::clock};
}

/// How long into the night the space is warmer.
Sentence lasts(const DayAnswer& answer) {
    const auto noticed = with<"noticed">(kelvin(noticed_k));
    if (!answer.warmer_until_hour) return say<"days.never_noticed">(noticed);
    const auto until = with<"until">(clock(*answer.warmer_until_hour));
    if (!answer.warmer_from_hour) return say<"days.warmer_until">(noticed, until);
    return say<"days.warmer_from">(noticed, with<"from">(clock(*answer.warmer_from_hour)), until);
}

/// The result, in the first sentences.
Sentence verdict(const DayAnswer& answer, const Candidate& candidate, const DayRun& run) {
    constexpr double all_of_it = 0.98;
    constexpr double part_of_it = 0.25;
    constexpr double hardly_k = 0.3;
    const DarkHours& all = answer.all;
    if (!run.heats_space) return say<"days.no_space">(with<"heat">(kwh(all.delivered_kwh_day)));
    const auto lift = with<"lift">(say<"days.lift">(
        with<"lasts">(lasts(answer)), with<"mean">(kelvin(all.lift_k)),
        with<"dusk">(kelvin(answer.dusk_lift_k)), with<"most">(kelvin(answer.most_lift_k)),
        with<"at">(clock(answer.most_lift_hour)), with<"dawn">(kelvin(answer.dawn_lift_k))));
    const auto& target_c = candidate.space->target_c;
    if (!target_c) return say<"days.no_target">(lift);
    const auto wanted = with<"wanted">(target_amount(*target_c));
    if (all.required_lift_k < hardly_k) return say<"days.hardly_below">(lift, wanted);
    const double share = all.lift_k / all.required_lift_k;
    const bool keeps = all.above_target_hours >= all_of_it * all.dark_hours;
    return say<"days.verdict">(lift, with<"short">(kelvin(all.required_lift_k)), wanted,
                               with<"verdict">(keeps                 ? say<"days.keeps">()
                                               : share >= part_of_it ? say<"days.carries_part">()
                                                                     : say<"days.edge_off">()));
}

/// Energy balance of all days.
Sentence heat(const DayRun& run) {
    const DayEnergy& energy = run.energy;
    const double mean_w =
        run.days > 0.0 ? energy.delivered_kwh * 1000.0 / (run.days * hours_of_day) : 0.0;
    const auto outside = with<"outside">(kwh(energy.outside_kwh));
    const auto stored = with<"stored">(kwh(std::fabs(energy.stored_kwh)));
    const Sentence balance =
        run.circuits > 1
            ? say<"days.balance_of_all">(with<"count">(static_cast<double>(run.circuits)))
            : say<"days.balance">();
    return say<"days.heat">(
        with<"days">(run.days, unit::none, 4), with<"in">(kwh(energy.delivered_kwh)),
        with<"available">(kwh(energy.available_kwh)), with<"mean">(mean_w, unit::watt, 2),
        with<"balance">(balance),
        with<"out">(run.heats_space
                        ? say<"days.to_space">(with<"space">(kwh(energy.to_space_kwh)), outside)
                        : say<"days.leaves_store">(outside)),
        with<"rest">(energy.stored_kwh >= 0.0 ? say<"days.stays">(stored)
                                              : say<"days.held_before">(stored)));
}

void tell_lid(Sentences& sentences, const DayAnswer& answer) {
    if (answer.lid_until_hour) {
        sentences.push_back(say<"days.lid_until">(with<"warm">(kelvin(warm_lid_k)),
                                                  with<"until">(clock(*answer.lid_until_hour))));
    }
}

void tell_switches(Sentences& sentences, const DayRun& run) {
    const auto opened =
        std::count_if(run.events.begin(), run.events.end(),
                      [](const SwitchEvent& event) { return event.what == SwitchAction::opens; });
    if (opened > 0) {
        const auto times = with<"times">(static_cast<double>(opened), unit::count);
        sentences.push_back(opened == 1 ? say<"days.opened_once">(times)
                                        : say<"days.opened">(times));
    }
    for (const SwitchEvent& event : run.events) {
        if (event.what != SwitchAction::cannot_open) continue;
        sentences.push_back(say<"days.not_opened">(with<"device">(event.device)));
    }
}

}  // namespace

void tell_peaks(Sentences& sentences, const std::vector<PartPeak>& peaks) {
    for (const PartPeak& peak : peaks) {
        const Severity severity = peak.margin.severity;
        if (severity != Severity::danger && severity != Severity::warning) continue;
        sentences.push_back(say<"days.peak">(with<"severity">(std::string(severity_name(severity))),
                                             with<"margin">(peak.margin.whole())));
    }
}

Sentences day_sentences(const DayAnswer& answer, const Candidate& candidate, const DayRun& run) {
    Sentences sentences{verdict(answer, candidate, run), heat(run)};
    if (!run.sun_of_month.empty()) sentences.push_back(run.sun_of_month);
    tell_lid(sentences, answer);
    tell_peaks(sentences, answer.peaks);
    tell_switches(sentences, run);
    return sentences;
}

}  // namespace heatmatch
