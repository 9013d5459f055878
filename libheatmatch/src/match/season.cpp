#include "heatmatch/match/season.hpp"

#include <algorithm>
#include <cmath>
#include <mutex>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/monthly_weather.hpp"

namespace heatmatch {

namespace {

constexpr std::array<const char*, 12> month_names{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};

/// Few rows each: a month needs fewer bins than a year for the same error.
NodeOptions month_options(int month, bool exact) {
    return {.months = {month},
            .calendar_year = true,
            .exact = exact,
            .irradiance_bins = 12,
            .temperature_bins = 4};
}

/// Energy of an array into a bank behind its wire [kWh], panel currents multiplied by `factor`.
double array_kwh(const EnergyCurve& curve, const Circuit& circuit, double bank_ohm, double factor) {
    const double total = bank_ohm + circuit.wire_ohm();
    const double each = total / circuit.panels.resistance_factor();
    return circuit.panels.count() * factor * curve.delivered_kwh(factor * each) * bank_ohm / total;
}

void add_band(Season& season, const Circuit& circuit, const EnergyCurve& curve) {
    const double low = circuit.bank.low_ohm();
    const double high = circuit.bank.high_ohm();
    const double wire = circuit.wire_ohm();
    const double scale = circuit.panels.resistance_factor();
    const PanelInService& panel = circuit.panel;
    for (double end : {panel.current_factor_low, panel.current_factor, panel.current_factor_high}) {
        const double factor = end / panel.current_factor;
        const double best = curve.best_resistance_ohm(factor * wire / scale) * scale / factor;
        for (double ohm : {low, circuit.bank.typical_ohm(), high, std::clamp(best, low, high)}) {
            const double kwh = array_kwh(curve, circuit, ohm, factor);
            season.kwh_low = std::min(season.kwh_low, kwh);
            season.kwh_high = std::max(season.kwh_high, kwh);
        }
    }
}

}  // namespace

std::shared_ptr<const Weather> own_weather(const Installation& installation,
                                           std::vector<std::string>& remarks) {
    if (!installation.weather) return nullptr;
    const Site& site = installation.site;
    if (!site.latitude_deg || !site.tilt_deg) {
        remarks.push_back(
            std::string("The twelve months of weather are not used: the site lacks ") +
            (site.latitude_deg ? "tilt_deg." : "latitude_deg."));
        return nullptr;
    }
    // Making a year of hours takes longer than ranking with it, and is asked for again and again.
    struct Last {
        Site site{};
        MonthlyNormals normals{};
        std::shared_ptr<const Weather> weather{};
    };
    static std::mutex guard;
    static Last last;
    const std::scoped_lock lock(guard);
    if (!last.weather || !(last.site == site) || !(last.normals == *installation.weather)) {
        last = {.site = site,
                .normals = *installation.weather,
                .weather = std::make_shared<const Weather>(
                    weather_from_months(*installation.weather, site))};
    }
    return last.weather;
}

SeasonWeather season_weather(const Weather& weather, std::span<const int> months, bool exact) {
    check_months(months);
    SeasonWeather result{.remarks = weather.remarks, .assumed = weather.assumed};
    std::vector<int> wanted(months.begin(), months.end());
    for (int month = 1; months.empty() && month <= 12; ++month) wanted.push_back(month);
    std::string missing;
    const bool has_months =
        std::any_of(weather.days.begin(), weather.days.end(), [](double d) { return d > 0.0; });
    for (int month = 1; month <= 12; ++month) {
        const auto index = static_cast<std::size_t>(month - 1);
        const bool in_season = std::find(wanted.begin(), wanted.end(), month) != wanted.end();
        if (weather.days[index] > 0.0) {
            const NodeOptions options = month_options(month, exact);
            try {
                result.month[index] = weather_nodes(weather, options);
            } catch (const InvalidInput&) {
                result.month[index] = WeatherNodes{};  // polar night: a month without sun
            }
        } else if (in_season) {
            missing += (missing.empty() ? "" : ", ") + std::string(month_names[index]);
        }
    }
    for (int month : wanted) {
        const auto index = static_cast<std::size_t>(month - 1);
        if (weather.days[index] <= 0.0) continue;
        result.months.push_back(month);
        result.days += days_of_month[index];
    }
    if (has_months && !missing.empty()) {
        result.remarks.push_back("The weather does not cover " + missing +
                                 ": the season is counted without.");
    }
    NodeOptions options{.months = result.months,
                        .calendar_year = true,
                        .exact = exact,
                        .irradiance_bins = 12,
                        .temperature_bins = 8};
    if (!has_months) {
        options.months.clear();
        options.calendar_year = false;
        for (double hours : weather.hours) result.days += hours / 24.0;
        result.remarks.push_back(
            "The weather tells no months: energy is over all of it, not over the season.");
    } else if (result.months.empty()) {
        options.months = wanted;  // no sun there: refused below
    }
    result.season = weather_nodes(weather, options);
    if (weather.has_cloud_band()) result.split = weather_nodes(split_by_cloud(weather), options);
    return result;
}

SeasonCurves season_curves(const PanelInService& panel, const SeasonWeather& weather,
                           VectorWidth width) {
    const Panel& label = panel.panel;
    const double noon = *label.v_mp / *label.i_mp;
    const auto curve_over = [&](const WeatherNodes& nodes) {
        return EnergyCurve(panel.today, *label.noct_c, nodes, noon, width);
    };
    SeasonCurves curves{.season = curve_over(weather.season)};
    curves.mpp_kwh = curves.season.mpp_kwh();
    if (weather.split) curves.split = curve_over(*weather.split);
    for (std::size_t m = 0; m < 12; ++m) {
        if (!weather.month[m]) continue;
        curves.month[m] = curve_over(*weather.month[m]);
        curves.mpp_month_kwh[m] = curves.month[m]->mpp_kwh();
    }
    return curves;
}

double Season::harvest_fraction() const {
    return mpp_kwh > 0.0 ? kwh / mpp_kwh : 0.0;
}

double Season::mean_kwh_per_day() const {
    return days > 0.0 ? kwh / days : 0.0;
}

std::string Season::best_ohm_sentence() const {
    const std::string best = format_number(best_ohm, 3) + " ohm";
    const std::string noon = format_number(noon_ohm, 3) + " ohm";
    const double ratio = noon_ohm > 0.0 ? best_ohm / noon_ohm : 0.0;
    constexpr double same = 0.05;
    if (std::fabs(ratio - 1.0) < same) {
        return "A bank of " + best + " takes the most over this season, about the " + noon +
               " of full sun (Vmp/Imp): here most of the energy comes in strong sun.";
    }
    if (ratio < 1.0) {
        return "A bank of " + best + " takes the most over this season, less than the " + noon +
               " of full sun (Vmp/Imp): cells this warm give fewer volts at hardly fewer amperes.";
    }
    return "A bank of " + best + " takes the most over this season, " + format_number(ratio, 3) +
           " times the " + noon +
           " of full sun (Vmp/Imp): in weaker sun the amperes fall and the volts hardly do, so the "
           "panels want more ohms.";
}

Season season_of(const Circuit& circuit, const SeasonCurves& curves, const SeasonWeather& weather,
                 std::optional<double> price_to_buy) {
    const double ohm = circuit.bank.typical_ohm();
    const double wire = circuit.wire_ohm();
    const double scale = circuit.panels.resistance_factor();
    const double each = (ohm + wire) / scale;
    const int panels = circuit.panels.count();
    Season season{.months = weather.months,
                  .days = weather.days,
                  .kwh = array_kwh(curves.season, circuit, ohm, 1.0),
                  .mpp_kwh = panels * curves.mpp_kwh,
                  .best_ohm = curves.season.best_resistance_ohm(wire / scale) * scale,
                  .noon_ohm = std::max(0.0, curves.season.noon_ohm() * scale - wire),
                  .near_short_share = curves.season.near_short_share(each),
                  .cloud_band = curves.split.has_value(),
                  .remarks = weather.remarks,
                  .assumed = weather.assumed};
    season.kwh_low = season.kwh;
    season.kwh_high = season.kwh;
    add_band(season, circuit, curves.season);
    if (curves.split) add_band(season, circuit, *curves.split);
    for (std::size_t m = 0; m < 12; ++m) {
        if (!curves.month[m]) continue;
        const double days = days_of_month[m];
        season.kwh_per_day[m] = array_kwh(*curves.month[m], circuit, ohm, 1.0) / days;
        season.mpp_kwh_per_day[m] = panels * curves.mpp_month_kwh[m] / days;
    }
    const double array_w = panels * curves.season.largest(each).power_w * ohm / (ohm + wire);
    season.element_power_w = array_w / circuit.bank.hookup.count();
    if (price_to_buy && season.kwh > 0.0) season.price_per_kwh = *price_to_buy / season.kwh;
    return season;
}

}  // namespace heatmatch
