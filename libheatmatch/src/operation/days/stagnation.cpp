#include "heatmatch/operation/days/stagnation.hpp"

#include "circuit_now.hpp"
#include "day_sentences.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/circuit/filled_store.hpp"
#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/group_weather.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

constexpr std::size_t rows_of_day = 24;

/// Energy into the bank on each day of a year of hours [kWh].
std::vector<double> daily_kwh(const Circuit& circuit, const DayWeather& year) {
    CircuitNow now(circuit);
    std::vector<double> days(year.size() / rows_of_day, 0.0);
    for (std::size_t row = 0; row < year.size(); ++row) {
        now.set_sun(year, row);
        days[row / rows_of_day] += now.flow().power_w * year.step_h / 1000.0;
    }
    return days;
}

/// First day of the fourteen days with the most energy; the year is periodic.
std::size_t best_fortnight(const std::vector<double>& days) {
    constexpr auto length = static_cast<std::size_t>(stagnation_days);
    std::size_t best = 0;
    double most = -1.0;
    for (std::size_t first = 0; first < days.size(); ++first) {
        double sum = 0.0;
        for (std::size_t day = 0; day < length; ++day) sum += days[(first + day) % days.size()];
        if (sum > most) {
            most = sum;
            best = first;
        }
    }
    return best;
}

/// Snow and dirt are not counted, because they may be absent.
DayWeather fortnight_of(const DayWeather& year, std::size_t first_day) {
    DayWeather days{.step_h = year.step_h,
                    .remarks = year.remarks,
                    .assumed = year.assumed,
                    .rear_assumed = year.rear_assumed};
    const auto rows = static_cast<std::size_t>(stagnation_days) * rows_of_day;
    for (std::size_t i = 0; i < rows; ++i) {
        const std::size_t row = (first_day * rows_of_day + i) % year.size();
        days.irradiance_w_m2.push_back(year.irradiance_w_m2[row]);
        days.heating_irradiance_w_m2.push_back(year.heating_irradiance_w_m2[row]);
        days.rear_w_m2.push_back(year.rear_w_m2[row]);
        days.air_c.push_back(year.air_c[row]);
        days.bare_share.push_back(1.0);
        days.month.push_back(year.month[row]);
    }
    for (const DayWeather& group : year.groups) {
        days.groups.push_back(fortnight_of(group, first_day));
    }
    return days;
}

/// A year of clear days on a plane without shade, which may be absent.
DayWeather clear_year(Site site) {
    site.snow_cover_pct.clear();
    site.soiling_pct.clear();
    return day_weather(clear_days(site));
}

/// The same on the plane of the panels of a circuit, or on those of all its groups.
DayWeather clear_year_of(const Candidate& candidate) {
    const auto& unlike = candidate.circuit.unlike;
    if (!unlike) return clear_year(site_of_group(candidate.site, candidate.circuit.owned));
    std::vector<DayWeather> groups;
    for (const GroupInArray& group : unlike->groups) {
        groups.push_back(clear_year(site_of_group(candidate.site, group.owned)));
    }
    DayWeather year = groups.front();
    year.groups = std::move(groups);
    return year;
}

/// For each part, the higher temperature of two fills.
void keep_hotter(std::vector<PartPeak>& peaks, const std::vector<PartPeak>& others) {
    for (PartPeak& peak : peaks) {
        for (const PartPeak& other : others) {
            const bool same = other.margin.name == peak.margin.name &&
                              other.margin.subject == peak.margin.subject;
            if (same && other.margin.value > peak.margin.value) peak = other;
        }
    }
}

/// Floor and materials: the field does not model leg ends; the margins' own stagnation does.
void add_closed_form(std::vector<PartPeak>& peaks, const Candidate& candidate, double hours) {
    for (Margin margin : candidate.margins()) {
        const bool floor = margin.name == "floor";
        const bool material = margin.name == "vessel material" || margin.name == "liner material" ||
                              margin.name == "lagging material";
        if (!floor && !material) continue;
        if (floor && margin.value_high) margin.value = margin.value_high;
        if (floor && margin.limit) grade(margin, room_c);
        peaks.push_back({.margin = std::move(margin), .hours = hours});
    }
}

/// Peaks and sentences of one circuit, of its runs in a fill of low and of high conductivity.
void tell_stagnation(Stagnation& result, const Candidate& candidate, const DayRun* well,
                     double air_c) {
    result.delivered_kwh = result.run.energy.delivered_kwh;
    result.peaks = part_peaks(candidate, result.run);
    const auto highest = [](const std::vector<double>& list_c) {
        return Amount{.value = *std::max_element(list_c.begin(), list_c.end()),
                      .unit = unit::celsius};
    };
    const DaySeries& series = result.run.series;
    const auto told = [&](auto say_it, auto... more) {
        return say_it(with<"air">(air_c, unit::celsius), with<"sheath">(highest(series.sheath_c)),
                      with<"bed">(highest(series.bed_mean_c)), with<"wall">(highest(series.wall_c)),
                      with<"lid">(highest(series.lid_c)), more...);
    };
    if (well == nullptr) {
        result.sentences.push_back(
            told([](auto... given) { return say<"days.stagnation_in_liquid">(given...); }));
    } else {
        // Heat that leaves the bed sooner heats its surface more.
        keep_hotter(result.peaks, part_peaks(candidate, *well));
        result.sentences.push_back(
            told([](auto... given) { return say<"days.stagnation">(given...); },
                 with<"sheath_well">(highest(well->series.sheath_c)),
                 with<"bed_well">(highest(well->series.bed_mean_c)),
                 with<"wall_well">(highest(well->series.wall_c)),
                 with<"lid_well">(highest(well->series.lid_c))));
    }
    add_closed_form(result.peaks, candidate, result.run.days * 24.0);
    tell_peaks(result.sentences, result.peaks);
}

}  // namespace

std::vector<Stagnation> simulate_stagnations(std::span<const Candidate> circuits,
                                             const Progress& progress) {
    for (const Candidate& candidate : circuits) {
        if (candidate.circuit.heat) continue;
        throw InvalidInput({.part = candidate.circuit.title(),
                            .field = "store",
                            .value = "(missing)",
                            .allowed = "known",
                            .remedy = say<"days.describe_store">()});
    }
    if (circuits.empty()) return {};
    tell_progress(progress, 0.0);
    std::vector<DayWeather> years;
    std::vector<double> daily;
    for (const Candidate& candidate : circuits) {
        years.push_back(clear_year_of(candidate));
        const std::vector<double> own = daily_kwh(candidate.circuit, years.back());
        daily.resize(own.size(), 0.0);
        for (std::size_t day = 0; day < own.size(); ++day) daily[day] += own[day];
    }
    const std::size_t first = best_fortnight(daily);
    std::vector<DayWeather> days;
    days.reserve(years.size());
    for (const DayWeather& year : years) days.push_back(fortnight_of(year, first));
    const double air_c = circuits.front().circuit.heat->store->hottest_air_c;
    const auto runs_at = [&](ConductivityEnd end) {
        return simulate_circuits(circuits, days,
                                 {.warm_up_days = 0,
                                  .conductivity = end,
                                  .switches = SwitchCase::breaker_welded,
                                  .air_around_c = air_c,
                                  .progress = progress});
    };
    std::vector<DayRun> poor = runs_at(ConductivityEnd::low);
    std::vector<DayRun> well;
    if (!circuits.front().circuit.heat->liquid) well = runs_at(ConductivityEnd::high);
    std::vector<Stagnation> results;
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        Stagnation result{.month = days[i].month.front(), .run = std::move(poor[i])};
        tell_stagnation(result, circuits[i], well.empty() ? nullptr : &well[i], air_c);
        results.push_back(std::move(result));
    }
    return results;
}

Stagnation simulate_stagnation(const Candidate& candidate, const Progress& progress) {
    return simulate_stagnations({&candidate, 1}, progress).front();
}

}  // namespace heatmatch
