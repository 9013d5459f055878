#include "heatmatch/match/candidate/season.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr std::array<const char*, 12> month_names{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};

/// Few rows each: a month needs fewer bins than a year for the same error. Polar night has none.
WeatherNodes month_nodes(const Weather& weather, std::size_t month, bool exact) {
    bool has_sun = false;
    for (std::size_t row = 0; row < weather.size() && !has_sun; ++row) {
        has_sun = weather.month[row] == month + 1 && weather.irradiance_w_m2[row] > 0.0 &&
                  weather.hours[row] > 0.0;
    }
    if (!has_sun) return {};
    return weather_nodes(weather, {.months = {static_cast<int>(month + 1)},
                                   .calendar_year = true,
                                   .exact = exact,
                                   .irradiance_bins = 12,
                                   .temperature_bins = 4});
}

/// Tells of the months wanted which are missing, cut short or without nights, and of rows without
/// one.
void add_cover_remarks(const Weather& weather, const std::array<MonthCover, 12>& cover,
                       const std::vector<int>& wanted, Sentences& remarks) {
    constexpr double whole = 0.95;
    std::string missing;
    std::string partly;
    std::string nightless;
    const auto list = [](std::string& names, const std::string& name) {
        names += (names.empty() ? "" : ", ") + name;
    };
    for (int month : wanted) {
        const auto m = static_cast<std::size_t>(month - 1);
        const std::string name = month_names[m];
        if (!cover[m].covered()) {
            list(missing, name);
        } else if (!cover[m].has_nights) {
            list(nightless, name);
        } else if (cover[m].share < whole) {
            list(partly, name + " (" + format_number(100.0 * cover[m].share, 2) + "%)");
        }
    }
    if (!missing.empty()) {
        remarks.push_back("The weather does not cover " + missing +
                          ": the season is counted without.");
    }
    if (!partly.empty()) {
        remarks.push_back("The weather covers a part of " + partly +
                          ": that part stands for the whole month.");
    }
    if (!nightless.empty()) {
        remarks.push_back("The weather has no nights in " + nightless +
                          ": its rows are counted as they are; give the nights as 0 W/m2.");
    }
    std::size_t unknown = 0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        if (weather.month[row] == 0 && weather.irradiance_w_m2[row] > 0.0) ++unknown;
    }
    if (unknown > 0) {
        remarks.push_back(std::to_string(unknown) +
                          " sunlit rows of the weather tell no month and are not counted.");
    }
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

SeasonWeather season_weather(const Weather& weather, std::span<const int> months, bool exact) {
    check_months(months);
    check_weather(weather);
    SeasonWeather result{.remarks = weather.remarks, .assumed = weather.assumed};
    for (double sun : weather.irradiance_w_m2) {
        result.brightest_w_m2 = std::max(result.brightest_w_m2, sun);
    }
    std::vector<int> wanted(months.begin(), months.end());
    for (int month = 1; months.empty() && month <= 12; ++month) wanted.push_back(month);
    const auto cover = month_cover(weather);
    const bool has_months = std::any_of(cover.begin(), cover.end(),
                                        [](const MonthCover& month) { return month.share > 0.0; });
    NodeOptions options{.exact = exact, .irradiance_bins = 12, .temperature_bins = 8};
    if (has_months) {
        for (int month : wanted) {
            if (!cover[static_cast<std::size_t>(month - 1)].covered()) continue;
            result.months.push_back(month);
            result.days += days_of_month[static_cast<std::size_t>(month - 1)];
        }
        add_cover_remarks(weather, cover, wanted, result.remarks);
        options.months = result.months.empty() ? wanted : result.months;
        options.calendar_year = true;
        for (std::size_t m = 0; m < 12; ++m) {
            if (cover[m].covered()) result.month[m] = month_nodes(weather, m, exact);
        }
    } else {
        for (double hours : weather.hours) result.days += hours / 24.0;
        result.remarks.push_back(
            "The weather tells no months: energy is over all of it, not over the season.");
    }
    result.season = weather_nodes(weather, options);
    if (weather.has_cloud_band()) result.split = weather_nodes(split_by_cloud(weather), options);
    return result;
}

double judged_irradiance_w_m2(const SeasonWeather& weather, const Site& site) {
    return std::max(weather.brightest_w_m2, site.bright_irradiance_w_m2);
}

Sentence bright_remark(const SeasonWeather& weather, const Site& site) {
    if (weather.brightest_w_m2 <= site.bright_irradiance_w_m2) return {};
    return "Margins are judged at " + format_number(weather.brightest_w_m2, 4) +
           " W/m2, the most that the weather has on the panels, not at the " +
           format_number(site.bright_irradiance_w_m2, 4) +
           " W/m2 of the site: snow and cloud edges add to the sun.";
}

SeasonCurves season_curves(const PanelInService& panel, const SeasonWeather& weather,
                           VectorWidth width) {
    const Panel& label = panel.panel;
    const double noon = *label.v_mp / *label.i_mp;
    const auto curve_over = [&](const WeatherNodes& nodes) {
        return EnergyCurve(panel.today, *label.noct_c, nodes, noon, width);
    };
    SeasonCurves curves{.season = curve_over(weather.season)};
    const OperatingPoint today =
        panel.today.at(stc_irradiance_w_m2, stc_temperature_c).maximum_power();
    if (today.current_a > 0.0) curves.noon_ohm = today.voltage_v / today.current_a;
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

Sentence Season::best_ohm_sentence() const {
    const std::string best = format_number(best_ohm, 3) + " ohm";
    const std::string noon = format_number(noon_ohm, 3) + " ohm";
    if (noon_ohm <= 0.0) {
        return "A bank of " + best +
               " takes the most over this season; in full sun the wire alone " +
               "has more ohms than the panels want (Vmp/Imp).";
    }
    const double ratio = best_ohm / noon_ohm;
    constexpr double same = 0.05;
    std::string cloud;
    if (best_ohm_cloud && std::fabs(*best_ohm_cloud / best_ohm - 1.0) > same) {
        cloud = " Cloud that comes and goes within the hour moves that towards " +
                format_number(*best_ohm_cloud, 3) +
                " ohm (each hour split into clear and overcast).";
    }
    const std::string most = "A bank of " + best + " takes the most over this season, ";
    const std::string matched = noon + " of full sun (Vmp/Imp today, cells at 25 °C): ";
    if (std::fabs(ratio - 1.0) < same) {
        return most + "about the " + matched + "here most of the energy comes in strong sun." +
               cloud;
    }
    if (ratio < 1.0) {
        return most + "less than the " + matched +
               "warm cells give fewer volts at hardly fewer amperes." + cloud;
    }
    return most + format_number(ratio, 3) + " times the " + matched +
           "in weaker sun the amperes fall and the volts hardly do, so the panels want more ohms." +
           cloud;
}

double Season::noon_loss() const {
    return best_kwh > 0.0 ? std::max(0.0, 1.0 - noon_kwh / best_kwh) : 0.0;
}

Sentence Season::noon_loss_sentence() const {
    if (noon_ohm <= 0.0) return {};
    const auto percent = [](double share) { return format_number(100.0 * share, 2) + " %"; };
    std::string text = "A bank of the " + format_number(noon_ohm, 3) + " ohm of full sun takes " +
                       format_number(noon_kwh, 3) + " kWh, " + percent(noon_loss()) +
                       " less than the " + format_number(best_kwh, 3) + " kWh of the best";
    if (noon_loss_cloud)
        text += "; " + percent(*noon_loss_cloud) + " less where cloud comes and goes";
    return text + '.';
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
                  .noon_ohm = std::max(0.0, curves.noon_ohm * scale - wire),
                  .near_short_share = curves.season.near_short_share(each),
                  .cloud_band = curves.split.has_value(),
                  .remarks = weather.remarks,
                  .assumed = weather.assumed};
    season.best_kwh = array_kwh(curves.season, circuit, season.best_ohm, 1.0);
    if (season.noon_ohm > 0.0) {
        season.noon_kwh = array_kwh(curves.season, circuit, season.noon_ohm, 1.0);
    }
    season.kwh_low = season.kwh;
    season.kwh_high = season.kwh;
    add_band(season, circuit, curves.season);
    if (curves.split) {
        add_band(season, circuit, *curves.split);
        season.best_ohm_cloud = curves.split->best_resistance_ohm(wire / scale) * scale;
        if (season.noon_ohm > 0.0) {
            const double most = array_kwh(*curves.split, circuit, *season.best_ohm_cloud, 1.0);
            const double noon = array_kwh(*curves.split, circuit, season.noon_ohm, 1.0);
            season.noon_loss_cloud = std::max(0.0, 1.0 - noon / most);
        }
    }
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
