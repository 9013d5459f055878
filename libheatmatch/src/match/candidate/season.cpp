#include "heatmatch/match/candidate/season.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/panel_energy.hpp"

namespace heatmatch {

namespace {

using candidate_sentences::say;

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

/// Reports requested months that are missing, incomplete or without nights, and rows without a
/// month.
void add_cover_remarks(const Weather& weather, const std::array<MonthCover, 12>& cover,
                       const std::vector<int>& wanted, Sentences& remarks) {
    constexpr double whole = 0.95;
    Sentences missing;
    Sentences partly;
    Sentences nightless;
    for (int month : wanted) {
        const auto m = static_cast<std::size_t>(month - 1);
        const Name name{month_names[m]};
        if (!cover[m].covered()) {
            missing.push_back(sentence_of(name));
        } else if (!cover[m].has_nights) {
            nightless.push_back(sentence_of(name));
        } else if (cover[m].share < whole) {
            partly.push_back(say<"season.part_of_month">(
                with<"month">(name), with<"share">(100.0 * cover[m].share, unit::percent, 2)));
        }
    }
    if (!missing.empty()) {
        remarks.push_back(say<"season.not_covered">(with<"months">(std::move(missing))));
    }
    if (!partly.empty()) {
        remarks.push_back(say<"season.partly_covered">(with<"months">(std::move(partly))));
    }
    if (!nightless.empty()) {
        remarks.push_back(say<"season.no_nights">(with<"months">(std::move(nightless)),
                                                  with<"night">(0.0, unit::watt_per_m2)));
    }
    std::size_t unknown = 0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        if (weather.month[row] == 0 && weather.irradiance_w_m2[row] > 0.0) ++unknown;
    }
    if (unknown > 0) {
        remarks.push_back(say<"season.rows_without_month">(
            with<"rows">(static_cast<double>(unknown), unit::none, 12)));
    }
}

/// Energy of an array into a bank behind its wire [kWh], with panel currents multiplied by
/// `factor`.
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

/// Heat from rear light, and its effect on the ends of the band.
void add_rear(Season& season, const Circuit& circuit, const SeasonCurves& curves) {
    const double ohm = circuit.bank.typical_ohm();
    const auto added = [&](const EnergyCurve& curve) {
        return array_kwh(curve, circuit, ohm, 1.0) - array_kwh(*curves.front, circuit, ohm, 1.0);
    };
    season.rear_kwh = added(curves.season);
    for (const EnergyCurve& end : curves.rear_ends) add_band(season, circuit, end);
    season.remarks.push_back(
        say<"season.rear">(with<"rear">(season.rear_kwh, unit::kilowatt_hour),
                           with<"low">(added(curves.rear_ends[0]), unit::kilowatt_hour),
                           with<"high">(added(curves.rear_ends[1]), unit::kilowatt_hour)));
}

}  // namespace

NodeOptions season_node_options(std::vector<int> months, bool exact) {
    const bool whole_months = !months.empty();
    return {.months = std::move(months),
            .calendar_year = whole_months,
            .exact = exact,
            .irradiance_bins = 12,
            .temperature_bins = 8};
}

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
    if (has_months) {
        for (int month : wanted) {
            if (!cover[static_cast<std::size_t>(month - 1)].covered()) continue;
            result.months.push_back(month);
            result.days += days_of_month[static_cast<std::size_t>(month - 1)];
        }
        add_cover_remarks(weather, cover, wanted, result.remarks);
        for (std::size_t m = 0; m < 12; ++m) {
            if (cover[m].covered()) result.month[m] = month_nodes(weather, m, exact);
        }
    } else {
        for (double hours : weather.hours) result.days += hours / 24.0;
        result.remarks.push_back(say<"season.no_months">());
    }
    if (!has_months) wanted.clear();
    const NodeOptions options =
        season_node_options(result.months.empty() ? wanted : result.months, exact);
    result.season = weather_nodes(weather, options);
    if (weather.has_cloud_band()) result.split = weather_nodes(split_by_cloud(weather), options);
    return result;
}

const SeasonWeather& SeasonWeather::for_panel(const PanelInService& panel) const {
    if (panel.rear.none()) return *this;
    const auto found =
        std::find_if(two_sided.begin(), two_sided.end(),
                     [&panel](const SeasonWeather& other) { return other.rear == panel.rear; });
    return found == two_sided.end() ? *this : *found;
}

double judged_irradiance_w_m2(const SeasonWeather& weather, const Site& site) {
    return std::max(weather.brightest_w_m2, site.bright_irradiance_w_m2);
}

Sentence bright_remark(const SeasonWeather& weather, const Site& site) {
    if (weather.brightest_w_m2 <= site.bright_irradiance_w_m2) return {};
    return say<"season.brightest">(with<"weather">(weather.brightest_w_m2, unit::watt_per_m2, 4),
                                   with<"site">(site.bright_irradiance_w_m2, unit::watt_per_m2, 4));
}

SeasonCurves season_curves(const PanelInService& panel, const SeasonWeather& any, VectorWidth width,
                           int series) {
    const SeasonWeather& weather = any.for_panel(panel);
    const auto curve_over = [&](const WeatherNodes& nodes) {
        return panel_energy(panel, nodes, width, series);
    };
    SeasonCurves curves{.season = curve_over(weather.season)};
    const OperatingPoint today =
        panel.today.at(stc_irradiance_w_m2, stc_temperature_c).maximum_power();
    if (today.current_a > 0.0) curves.stc_match_ohm = today.voltage_v / today.current_a;
    curves.mpp_kwh = curves.season.mpp_kwh();
    if (weather.split) curves.split = curve_over(*weather.split);
    if (!weather.rear_ends.empty()) curves.front = curve_over(any.season);
    for (const auto& nodes : weather.rear_ends) curves.rear_ends.push_back(curve_over(nodes));
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
    const auto best = with<"best">(best_ohm, unit::ohm);
    if (stc_match_ohm <= 0.0) return say<"season.best_ohm_within_wire">(best);
    const auto noon = with<"noon">(stc_match_ohm, unit::ohm);
    const auto cells = with<"cells">(stc_temperature_c, unit::celsius);
    const double ratio = best_ohm / stc_match_ohm;
    constexpr double same = 0.05;
    Sentences said;
    if (std::fabs(ratio - 1.0) < same) {
        said.push_back(say<"season.best_ohm_like_noon">(best, noon, cells));
    } else if (ratio < 1.0) {
        said.push_back(say<"season.best_ohm_less">(best, noon, cells));
    } else {
        said.push_back(say<"season.best_ohm_more">(best, with<"ratio">(ratio), noon, cells));
    }
    if (best_ohm_cloud && std::fabs(*best_ohm_cloud / best_ohm - 1.0) > same) {
        said.push_back(say<"season.best_ohm_cloud">(with<"best">(*best_ohm_cloud, unit::ohm)));
    }
    return said.size() == 1 ? std::move(said.front()) : sentence_of(std::move(said));
}

double Season::stc_match_loss() const {
    return best_kwh > 0.0 ? std::max(0.0, 1.0 - stc_match_kwh / best_kwh) : 0.0;
}

Sentence Season::stc_match_loss_sentence() const {
    if (stc_match_ohm <= 0.0) return {};
    const auto loss = [](double share) {
        return with<"loss">(Amount{100.0 * share, unit::percent, 2, Shown::number});
    };
    Sentence cloud;
    if (stc_match_loss_cloud)
        cloud = say<"season.stc_match_loss_cloud">(loss(*stc_match_loss_cloud));
    return say<"season.stc_match_loss">(
        with<"noon">(stc_match_ohm, unit::ohm),
        with<"noon_heat">(stc_match_kwh, unit::kilowatt_hour), loss(stc_match_loss()),
        with<"best_heat">(best_kwh, unit::kilowatt_hour), with<"cloud">(std::move(cloud)));
}

Season season_of(const Circuit& circuit, const SeasonCurves& curves, const SeasonWeather& any,
                 std::optional<double> price_to_buy) {
    const SeasonWeather& weather = any.for_panel(circuit.panel);
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
                  .stc_match_ohm = std::max(0.0, curves.stc_match_ohm * scale - wire),
                  .near_short_circuit_share = curves.season.near_short_circuit_share(each),
                  .cloud_band = curves.split.has_value(),
                  .remarks = weather.remarks,
                  .assumed = weather.assumed};
    season.best_kwh = array_kwh(curves.season, circuit, season.best_ohm, 1.0);
    if (season.stc_match_ohm > 0.0) {
        season.stc_match_kwh = array_kwh(curves.season, circuit, season.stc_match_ohm, 1.0);
    }
    season.kwh_low = season.kwh;
    season.kwh_high = season.kwh;
    add_band(season, circuit, curves.season);
    if (curves.split) {
        add_band(season, circuit, *curves.split);
        season.best_ohm_cloud = curves.split->best_resistance_ohm(wire / scale) * scale;
        if (season.stc_match_ohm > 0.0) {
            const double most = array_kwh(*curves.split, circuit, *season.best_ohm_cloud, 1.0);
            const double noon = array_kwh(*curves.split, circuit, season.stc_match_ohm, 1.0);
            season.stc_match_loss_cloud = std::max(0.0, 1.0 - noon / most);
        }
    }
    if (curves.front) add_rear(season, circuit, curves);
    for (std::size_t m = 0; m < 12; ++m) {
        if (!curves.month[m]) continue;
        const double days = days_of_month[m];
        season.kwh_per_day[m] = array_kwh(*curves.month[m], circuit, ohm, 1.0) / days;
        season.mpp_kwh_per_day[m] = panels * curves.mpp_month_kwh[m] / days;
    }
    const double array_w = panels * curves.season.largest(each).power_w * ohm / (ohm + wire);
    season.element_power_w = circuit.bank.unlike ? array_w * circuit.bank.largest_power_share()
                                                 : array_w / circuit.bank.hookup.count();
    if (price_to_buy && season.kwh > 0.0) season.price_per_kwh = *price_to_buy / season.kwh;
    return season;
}

}  // namespace heatmatch
