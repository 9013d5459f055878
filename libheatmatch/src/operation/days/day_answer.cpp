#include "heatmatch/operation/days/day_answer.hpp"

#include "day_sentences.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

constexpr double dark_w_m2 = 1.0;
constexpr double most_c = std::numeric_limits<double>::infinity();

/// A period without sun: first step, and one after its last.
struct Night {
    std::size_t from = 0;
    std::size_t to = 0;
};

double step_hours(const DaySeries& series, std::size_t step) {
    return series.hours[step] - (step == 0 ? 0.0 : series.hours[step - 1]);
}

bool is_dark(const DaySeries& series, std::size_t step) {
    return series.irradiance_w_m2[step] < dark_w_m2;
}

std::vector<Night> nights_of(const DaySeries& series) {
    std::vector<Night> nights;
    for (std::size_t step = 0; step < series.hours.size(); ++step) {
        if (!is_dark(series, step)) continue;
        if (step == 0 || !is_dark(series, step - 1)) nights.push_back({step, step});
        nights.back().to = step + 1;
    }
    return nights;
}

/// Whole nights, from dusk to dawn; all nights where none is whole.
std::vector<Night> whole_nights(const DaySeries& series) {
    const std::vector<Night> all = nights_of(series);
    std::vector<Night> whole;
    for (const Night& night : all) {
        if (night.from > 0 && night.to < series.hours.size()) whole.push_back(night);
    }
    return whole.empty() ? all : whole;
}

double lift_k(const DaySeries& series, std::size_t step) {
    return series.space_c[step] - series.space_unheated_c[step];
}

/// Hours from dusk during which a condition is true without interruption, mean of the nights.
template <typename Test>
double mean_hours_kept(const DaySeries& series, const std::vector<Night>& nights, Test test) {
    double sum = 0.0;
    for (const Night& night : nights) {
        for (std::size_t step = night.from; step < night.to && test(night, step); ++step) {
            sum += step_hours(series, step);
        }
    }
    return sum / static_cast<double>(nights.size());
}

double dusk_hour(const DayRun& run, const std::vector<Night>& nights) {
    // Dusks differ by minutes: their mean on the circle of the day.
    double x = 0.0;
    double y = 0.0;
    constexpr double turn = 6.283185307179586 / hours_of_day;
    for (const Night& night : nights) {
        const double at =
            run.first_hour + (night.from == 0 ? 0.0 : run.series.hours[night.from - 1]);
        x += std::cos(at * turn);
        y += std::sin(at * turn);
    }
    const double hour = std::atan2(y, x) / turn;
    return hour < 0.0 ? hour + hours_of_day : hour;
}

/// Sums the steps of one month, or of all.
class Sum {
  public:
    Sum(int month, std::optional<double> target_c) : target_c_(target_c) {
        dark_.month = month;
        dark_.lowest_c = most_c;
        dark_.lowest_unheated_c = most_c;
    }

    void add(const DayRun& run, std::size_t step) {
        const DaySeries& series = run.series;
        const double hours = step_hours(series, step);
        hours_ += hours;
        dark_.available_kwh_day += series.available_w[step] * hours / 1000.0;
        dark_.delivered_kwh_day += series.power_w[step] * hours / 1000.0;
        if (run.heats_space) dark_.to_space_kwh_day += series.to_space_w[step] * hours / 1000.0;
        if (!is_dark(series, step)) return;
        dark_.dark_hours += hours;
        dark_.lift_k += lift_k(series, step) * hours;
        dark_.lowest_c = std::min(dark_.lowest_c, series.space_c[step]);
        dark_.lowest_unheated_c = std::min(dark_.lowest_unheated_c, series.space_unheated_c[step]);
        if (!target_c_) return;
        if (series.space_c[step] >= *target_c_) dark_.above_target_hours += hours;
        if (series.space_unheated_c[step] >= *target_c_) dark_.above_target_unheated_hours += hours;
        dark_.required_lift_k += std::max(0.0, *target_c_ - series.space_unheated_c[step]) * hours;
    }

    [[nodiscard]] DarkHours result() const {
        DarkHours dark = dark_;
        dark.days = hours_ / hours_of_day;
        if (dark.days > 0.0) {
            dark.available_kwh_day /= dark.days;
            dark.delivered_kwh_day /= dark.days;
            dark.to_space_kwh_day /= dark.days;
        }
        if (dark.dark_hours > 0.0) {
            dark.lift_k /= dark.dark_hours;
            dark.required_lift_k /= dark.dark_hours;
        } else {
            dark.lowest_c = 0.0;
            dark.lowest_unheated_c = 0.0;
        }
        return dark;
    }

  private:
    std::optional<double> target_c_{};
    DarkHours dark_{};
    double hours_ = 0.0;
};

void sum_months(DayAnswer& answer, const DayRun& run, std::optional<double> target_c) {
    Sum all(0, target_c);
    std::vector<std::pair<int, Sum>> months;
    for (std::size_t step = 0; step < run.series.hours.size(); ++step) {
        all.add(run, step);
        const int month = run.series.month[step];
        if (month == 0) continue;
        if (months.empty() || months.back().first != month) {
            months.emplace_back(month, Sum(month, target_c));
        }
        months.back().second.add(run, step);
    }
    answer.all = all.result();
    for (const auto& [month, sum] : months) answer.months.push_back(sum.result());
}

/// Rise of the mean night, step by step after dusk, as long as half of the nights last. A duration
/// averaged over nights instead would count none where the rise comes only after dusk.
std::vector<double> mean_night(const DaySeries& series, const std::vector<Night>& nights) {
    std::vector<double> rise_k;
    for (std::size_t after = 0;; ++after) {
        double sum = 0.0;
        std::size_t count = 0;
        for (const Night& night : nights) {
            if (night.from + after >= night.to) continue;
            sum += lift_k(series, night.from + after);
            ++count;
        }
        if (count == 0 || 2 * count < nights.size()) return rise_k;
        rise_k.push_back(sum / static_cast<double>(count));
    }
}

void sum_mean_night(DayAnswer& answer, const DaySeries& series, const std::vector<Night>& nights,
                    double dusk) {
    const std::vector<double> rise_k = mean_night(series, nights);
    if (rise_k.empty()) return;
    // Values are those of the end of each step.
    const auto hour_after = [&](std::size_t steps) {
        const double hours = static_cast<double>(steps) * step_hours(series, nights.front().from);
        return std::fmod(dusk + hours, hours_of_day);
    };
    const auto most = std::max_element(rise_k.begin(), rise_k.end());
    answer.most_lift_k = *most;
    answer.most_lift_hour = hour_after(static_cast<std::size_t>(most - rise_k.begin()) + 1);
    const auto noticed = [](double rise) { return rise >= noticed_k; };
    const auto first = std::find_if(rise_k.begin(), rise_k.end(), noticed);
    if (first == rise_k.end()) return;
    const auto last = std::find_if(rise_k.rbegin(), rise_k.rend(), noticed);
    if (first != rise_k.begin()) {
        answer.warmer_from_hour = hour_after(static_cast<std::size_t>(first - rise_k.begin()) + 1);
    }
    answer.warmer_until_hour = hour_after(static_cast<std::size_t>(rise_k.rend() - last));
}

void sum_nights(DayAnswer& answer, const DayRun& run) {
    const DaySeries& series = run.series;
    const std::vector<Night> nights = whole_nights(series);
    if (nights.empty()) return;
    const auto count = static_cast<double>(nights.size());
    for (const Night& night : nights) {
        answer.dusk_lift_k += lift_k(series, night.from) / count;
        answer.dawn_lift_k += lift_k(series, night.to - 1) / count;
    }
    const double dusk = dusk_hour(run, nights);
    const auto until = [dusk](double hours) { return std::fmod(dusk + hours, hours_of_day); };
    if (run.heats_space) sum_mean_night(answer, series, nights, dusk);
    const double lid_h = mean_hours_kept(series, nights, [&](const Night&, std::size_t step) {
        return series.lid_c[step] >= series.space_c[step] + warm_lid_k;
    });
    if (lid_h > 0.0) answer.lid_until_hour = until(lid_h);

    double carried_h = 0.0;
    double carrying = 0.0;
    for (const Night& night : nights) {
        const auto from = series.released_w.begin() + static_cast<std::ptrdiff_t>(night.from);
        const auto to = series.released_w.begin() + static_cast<std::ptrdiff_t>(night.to);
        const double best_w = *std::max_element(from, to);
        if (best_w <= 0.0) continue;
        double hours = 0.0;
        for (std::size_t step = night.from; step < night.to; ++step) {
            if (series.released_w[step] >= 0.5 * best_w) {
                hours =
                    series.hours[step] - series.hours[night.from] + step_hours(series, night.from);
            }
        }
        carried_h += hours;
        carrying += 1.0;
    }
    if (carrying > 0.0) answer.carry_over_h = carried_h / carrying;
}

}  // namespace

DayAnswer answer_of(const Candidate& candidate, const DayRun& run) {
    DayAnswer answer{.peaks = part_peaks(candidate, run)};
    const std::optional<double> target_c =
        candidate.space ? candidate.space->target_c : std::optional<double>();
    sum_months(answer, run, target_c);
    sum_nights(answer, run);
    answer.sentences = day_sentences(answer, candidate, run);
    return answer;
}

}  // namespace heatmatch
