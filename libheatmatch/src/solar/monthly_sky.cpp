#include "heatmatch/solar/monthly_sky.hpp"

#include "clearness.hpp"
#include "kept_sky.hpp"
#include "sentences.hpp"
#include "solar_year.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <numeric>
#include <optional>
#include <utility>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr std::array<const char*, 12> month_names{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};

/// Share of darker days for each day of a month, in an order that covers the month evenly:
/// multiples of the golden ratio, ranked.
std::vector<double> darker_share(std::size_t days) {
    constexpr double golden = 0.6180339887498949;
    std::vector<double> place(days);
    for (std::size_t day = 0; day < days; ++day) {
        const double turn = (static_cast<double>(day) + 0.5) * golden;
        place[day] = turn - std::floor(turn);
    }
    std::vector<double> share(days);
    for (std::size_t day = 0; day < days; ++day) {
        const auto darker = std::count_if(place.begin(), place.end(),
                                          [&](double other) { return other < place[day]; });
        share[day] = (static_cast<double>(darker) + 0.5) / static_cast<double>(days);
    }
    return share;
}

/// An hour of a month with the inputs of its sky.
struct Hour {
    YearHour at{};
    double clear_w_m2 = 0.0;  //!< global irradiance of the month's clear air

    [[nodiscard]] SkyIrradiance sky(double index) const {
        const SkyMoment& moment = at.moment;
        const double ghi =
            std::min(index * clear_w_m2, moment.extraterrestrial_w_m2 * moment.cosine());
        SkyIrradiance split = erbs_split(ghi, moment.sun.zenith_deg, moment.extraterrestrial_w_m2);
        // A low sun appears higher than it is, which would give more than the extraterrestrial
        // irradiance.
        split.dni_w_m2 = std::min(split.dni_w_m2, moment.extraterrestrial_w_m2);
        return split;
    }
};

/// One month: its hours, and their irradiance.
struct Month {
    std::size_t index = 0;
    std::vector<Hour> hours{};
    std::vector<double> darker{};  //!< share of darker days for each day
    double clearness = 0.0;        //!< mean sky index
    double scale = 0.0;            //!< correction for the small steps of Erbs

    /// The sky index of each day.
    [[nodiscard]] std::vector<double> indices(double mean) const {
        const SkyIndices spread(mean);
        std::vector<double> of_day;
        of_day.reserve(darker.size());
        for (const double share : darker) of_day.push_back(spread.at(share));
        return of_day;
    }
    /// Mean daily sum on a plane before the glass [kWh/m2].
    [[nodiscard]] double daily_kwh_m2(const SitePlane& plane, double mean) const {
        const std::vector<double> of_day = indices(mean);
        double sum = 0.0;
        for (const Hour& hour : hours) {
            if (hour.clear_w_m2 <= 0.0) continue;
            const SkyIrradiance sky = hour.sky(of_day[hour.at.day_of_month]);
            sum += light_on_glass(plane, hour.at.moment, sky).total_w_m2();
        }
        return sum / 1000.0 / days_of_month[index];
    }
};

/// The first mean clearness, searched in steps, with which a month has its sum; empty where no step
/// reaches it, `largest` is then the sum under the clearest sky.
std::optional<double> first_clearness(const Month& month, const SitePlane& plane,
                                      double wanted_kwh_m2, double step, double& largest) {
    for (int k = 1; (k - 1) * step < clearest_month; ++k) {
        const double low = (k - 1) * step;
        const double high = std::min(k * step, clearest_month);
        const double sum = month.daily_kwh_m2(plane, high);
        largest = std::max(largest, sum);
        if (sum < wanted_kwh_m2) continue;
        std::uintmax_t steps = 60;
        const auto [left, right] = boost::math::tools::toms748_solve(
            [&](double at) {
                return (at > 0.0 ? month.daily_kwh_m2(plane, at) : 0.0) - wanted_kwh_m2;
            },
            low, high, boost::math::tools::eps_tolerance<double>(30), steps);
        return 0.5 * (left + right);
    }
    return std::nullopt;
}

/// The mean clearness with which a month has its sum; the lowest where a plane facing away from the
/// sun has two. Throws InvalidInput.
double month_clearness(const Month& month, const SitePlane& plane, double wanted_kwh_m2) {
    double largest = 0.0;
    // Such a plane may have both between two long steps.
    for (double step : {0.1, 0.05}) {
        const auto found = first_clearness(month, plane, wanted_kwh_m2, step, largest);
        if (found) return *found;
    }
    throw InvalidInput(ErrorDetail{
        .part = "weather",
        .field =
            "sun_hours[" + std::to_string(month.index) + "] (" + month_names[month.index] + ")",
        .value = format_number(wanted_kwh_m2, 4) + " kWh/m2",
        .allowed = "<= " + format_number(largest, 3) +
                   " kWh/m2, the sum under the clearest sky on this plane",
        .remedy = say<"solar.check_sum">(with<"unit">(Name{"kWh/m2"}))});
}

std::array<Month, 12> months_of(const SitePlane& site, const MonthlyNormals& normals) {
    std::array<Month, 12> months;
    SitePlane clear = site;
    for (std::size_t m = 0; m < 12; ++m) {
        months[m].index = m;
        months[m].darker = darker_share(static_cast<std::size_t>(days_of_month[m]));
        clear.linke_turbidity[m] = turbidity_of_clear_hours(normals.temp_min_c[m]);
    }
    for (const YearHour& at : solar_year(site)) {
        const SkyMoment& moment = at.moment;
        Hour hour{.at = at};
        if (moment.is_day()) hour.clear_w_m2 = clear_sky_at(clear, moment).ghi_w_m2;
        months[moment.month].hours.push_back(hour);
    }
    return months;
}

void find_sky(Month& month, const SitePlane& plane, double wanted_kwh_m2) {
    if (wanted_kwh_m2 <= 0.0) return;
    month.clearness = month_clearness(month, plane, wanted_kwh_m2);
    month.scale = wanted_kwh_m2 / month.daily_kwh_m2(plane, month.clearness);
}

}  // namespace

struct MonthlySky::Months {
    std::array<Month, 12> list{};
};

MonthlySky::MonthlySky(const MonthlyNormals& normals, const Site& site)
    : normals_(normals), site_(site) {
    check_record(monthly_normals_fields(), &normals, "weather");
    check_monthly_normals(normals);
    const SitePlane plane = plane_by_the_sun(site);
    if (std::all_of(normals.sun_hours.begin(), normals.sun_hours.end(),
                    [](double sum) { return sum <= 0.0; })) {
        throw InvalidInput(ErrorDetail{.part = "weather",
                                       .field = "sun_hours",
                                       .value = "0 kWh/m2 in every month",
                                       .allowed = "above 0 kWh/m2 in at least one month",
                                       .remedy = say<"solar.full_sun">()});
    }
    auto months = std::make_shared<Months>(Months{.list = months_of(plane, normals)});
    // If several months are rejected, the first is reported, whichever thread was faster.
    std::array<std::exception_ptr, 12> refused{};
    parallel_for(12, worker_count(0, 12), [&](std::size_t m, std::size_t, const Pulse&) {
        try {
            find_sky(months->list[m], plane, normals.sun_hours[m]);
        } catch (const InvalidInput&) {
            refused[m] = std::current_exception();
        }
    });
    for (const std::exception_ptr& error : refused)
        if (error) std::rethrow_exception(error);
    months_ = std::move(months);
}

Site MonthlySky::turned(std::optional<double> tilt_deg, std::optional<double> azimuth_deg) const {
    Site site = site_;
    if (tilt_deg) site.tilt_deg = tilt_deg;
    if (azimuth_deg) site.azimuth_deg = azimuth_deg;
    check_record(site_fields(), &site, "site");
    return site;
}

Weather MonthlySky::weather(std::optional<double> tilt_deg,
                            std::optional<double> azimuth_deg) const {
    const Site site = turned(tilt_deg, azimuth_deg);
    const SitePlane plane = plane_by_the_sun(site);
    SkyRows rows{.site = site};
    Weather weather{.first_hour = 0.0, .assumed = plane.assumed};
    weather.assumed.push_back(still_wind_assumption());
    weather.assumed.push_back(
        {.part = "weather",
         .field = "hours",
         .value = say<"solar.spread">(),
         .source = say<"solar.spread_source">(with<"source">(Name{"suehrcke-2000"}))});
    for (const Month& month : months_->list) {
        const std::vector<double> of_day = month.indices(month.clearness);
        for (const Hour& hour : month.hours) {
            SkyIrradiance sky = hour.sky(of_day[hour.at.day_of_month]);
            sky = {.ghi_w_m2 = sky.ghi_w_m2 * month.scale,
                   .dni_w_m2 = sky.dni_w_m2 * month.scale,
                   .dhi_w_m2 = sky.dhi_w_m2 * month.scale};
            const PanelAir air{.air_c = air_at_hour(normals_, hour.at)};
            append_row(weather, plane, hour.at.moment, sky, air, 1.0);
            append_sky(rows, hour.at.unix_time_s, sky, air, 1.0);
        }
    }
    keep_sky(weather, std::move(rows), plane.assumed.size());
    return weather;
}

std::vector<double> MonthlySky::sun_hours(std::optional<double> tilt_deg,
                                          std::optional<double> azimuth_deg) const {
    const SitePlane plane = plane_by_the_sun(turned(tilt_deg, azimuth_deg));
    std::vector<double> sums;
    for (const Month& month : months_->list)
        sums.push_back(month.scale * month.daily_kwh_m2(plane, month.clearness));
    return sums;
}

}  // namespace heatmatch
