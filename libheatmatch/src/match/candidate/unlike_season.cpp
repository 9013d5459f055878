#include "heatmatch/match/candidate/unlike_season.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/mixed_energy.hpp"

namespace heatmatch {

using candidate_sentences::say;

namespace {

constexpr std::size_t points_of_curve = 48;

PlacedArray with_nodes(PlacedArray placed, std::vector<WeatherNodes> nodes) {
    placed.planes = std::move(nodes);
    return placed;
}

/// Sums over the nodes of an array [kWh]: into a resistance, and at its maximum power points.
struct NodeSums {
    double delivered_kwh = 0.0;
    double mpp_kwh = 0.0;
};

NodeSums sums_over(const PlacedArray& placed, double resistance_ohm) {
    NodeSums sums;
    const std::vector<double>& hours = placed.planes.front().hours;
    for (std::size_t node = 0; node < hours.size(); ++node) {
        if (hours[node] <= 0.0) continue;
        const MixedArrayCurve curve = placed.at(node);
        const double kilohours = hours[node] / 1000.0;
        sums.delivered_kwh += kilohours * curve.into_resistance(resistance_ohm).power_w;
        sums.mpp_kwh += kilohours * curve.maximum_power().power_w;
    }
    return sums;
}

/// Heat behind the wire of a circuit.
struct BehindWire {
    double wire_ohm = 0.0;

    double operator()(const EnergyCurve& curve, double bank_ohm) const {
        return curve.delivered_kwh(bank_ohm, wire_ohm);
    }
    /// The best bank: the energy of unlike panels may have several maxima over the resistance.
    double best_ohm(const EnergyCurve& curve) const {
        const auto grid = curve.grid_ohm();
        std::size_t best = 0;
        for (std::size_t i = 1; i < grid.size(); ++i) {
            if ((*this)(curve, grid[i]) > (*this)(curve, grid[best])) best = i;
        }
        double low = std::log(grid[best == 0 ? 0 : best - 1]);
        double high = std::log(grid[std::min(best + 1, grid.size() - 1)]);
        const double ratio = 0.5 * (std::sqrt(5.0) - 1.0);
        constexpr int steps = 40;
        for (int i = 0; i < steps; ++i) {
            const double a = high - ratio * (high - low);
            const double b = low + ratio * (high - low);
            const bool left = (*this)(curve, std::exp(a)) > (*this)(curve, std::exp(b));
            (left ? high : low) = left ? b : a;
        }
        return std::exp(0.5 * (low + high));
    }
};

/// Whether any plane has sun in a month that the weather covers.
bool has_sun(const ArraySun& sun, int month) {
    return std::any_of(sun.planes.begin(), sun.planes.end(), [month](const auto& plane) {
        for (std::size_t row = 0; row < plane->size(); ++row) {
            if (plane->month[row] == month && plane->irradiance_w_m2[row] > 0.0 &&
                plane->hours[row] > 0.0) {
                return true;
            }
        }
        return false;
    });
}

class UnlikeSeason {
  public:
    UnlikeSeason(const Circuit& circuit, const Weather& weather, const Site& site,
                 const SeasonOptions& options)
        : circuit_(circuit),
          array_(*circuit.unlike),
          options_(options),
          sun_(array_sun(array_, weather, site)),
          first_(season_weather(*sun_.planes.front(), options.months, options.exact)),
          node_options_(season_node_options(months_of(), options.exact)),
          behind_{circuit.wire_ohm()},
          curve_(curve_of(sun_, PanelState::today, false)) {}

    Season made(const Weather& weather, const Site& site) {
        const double ohm = circuit_.bank.typical_ohm();
        const double total = ohm + behind_.wire_ohm;
        season_ = {.months = first_.months,
                   .days = first_.days,
                   .kwh = behind_(curve_, ohm),
                   .mpp_kwh = curve_.mpp_kwh(),
                   .best_ohm = behind_.best_ohm(curve_),
                   .stc_match_ohm = std::max(0.0, curve_.stc_match_ohm() - behind_.wire_ohm),
                   .near_short_circuit_share = curve_.near_short_circuit_share(total),
                   .remarks = first_.remarks,
                   .assumed = first_.assumed};
        season_.best_kwh = behind_(curve_, season_.best_ohm);
        if (season_.stc_match_ohm > 0.0) {
            season_.stc_match_kwh = behind_(curve_, season_.stc_match_ohm);
        }
        season_.kwh_low = season_.kwh;
        season_.kwh_high = season_.kwh;
        add_band(sun_, false);
        add_cloud();
        add_rear(weather, site);
        add_months();
        season_.element_power_w =
            curve_.largest(total).power_w * ohm / total * circuit_.bank.largest_power_share();
        if (options_.price_to_buy && season_.kwh > 0.0) {
            season_.price_per_kwh = *options_.price_to_buy / season_.kwh;
        }
        return std::move(season_);
    }

  private:
    /// The months to sum over; none for rows without months.
    [[nodiscard]] std::vector<int> months_of() const {
        if (!first_.months.empty()) return first_.months;
        const auto cover = month_cover(*sun_.planes.front());
        const bool has_months = std::any_of(
            cover.begin(), cover.end(), [](const MonthCover& month) { return month.share > 0.0; });
        return has_months ? options_.months : std::vector<int>{};
    }

    [[nodiscard]] EnergyCurve curve_of(const ArraySun& sun, PanelState state, bool split) const {
        std::vector<WeatherNodes> nodes;
        if (split) {
            nodes = {weather_nodes(split_by_cloud(*sun.planes.front()), node_options_)};
        } else {
            nodes = plane_nodes(sun.all(), node_options_);
        }
        return {with_nodes(sun.placed(array_, state), std::move(nodes)),
                stc_match_ohm(array_.array(PanelState::today)), points_of_curve};
    }

    void keep(const EnergyCurve& curve) {
        const double low = circuit_.bank.low_ohm();
        const double high = circuit_.bank.high_ohm();
        for (const double ohm : {low, circuit_.bank.typical_ohm(), high,
                                 std::clamp(behind_.best_ohm(curve), low, high)}) {
            const double kwh = behind_(curve, ohm);
            season_.kwh_low = std::min(season_.kwh_low, kwh);
            season_.kwh_high = std::max(season_.kwh_high, kwh);
        }
    }

    void add_band(const ArraySun& sun, bool split) {
        for (const PanelState state : {PanelState::weak, PanelState::today, PanelState::strong}) {
            keep(curve_of(sun, state, split));
        }
    }

    void add_cloud() {
        if (sun_.planes.size() > 1 || !sun_.planes.front()->has_cloud_band()) return;
        season_.cloud_band = true;
        add_band(sun_, true);
        const EnergyCurve split = curve_of(sun_, PanelState::today, true);
        season_.best_ohm_cloud = behind_.best_ohm(split);
        if (season_.stc_match_ohm <= 0.0) return;
        const double most = behind_(split, *season_.best_ohm_cloud);
        const double noon = behind_(split, season_.stc_match_ohm);
        season_.stc_match_loss_cloud = std::max(0.0, 1.0 - noon / most);
    }

    void add_rear(const Weather& weather, const Site& site) {
        const bool bifacial =
            std::any_of(array_.groups.begin(), array_.groups.end(),
                        [](const GroupInArray& group) { return !group.panel.rear.none(); });
        if (!bifacial) return;
        if (weather.rear_w_m2.empty()) {
            season_.remarks.push_back(say<"season.rear_not_known">());
            return;
        }
        const double ohm = circuit_.bank.typical_ohm();
        const auto kwh_at = [&](RearEnd end) {
            const ArraySun sun = array_sun(array_, weather, site, end);
            if (end == RearEnd::low || end == RearEnd::high) add_band(sun, false);
            return behind_(curve_of(sun, PanelState::today, false), ohm);
        };
        const double front = kwh_at(RearEnd::none);
        season_.rear_kwh = season_.kwh - front;
        season_.assumed.insert(season_.assumed.end(), weather.rear_assumed.begin(),
                               weather.rear_assumed.end());
        season_.remarks.push_back(
            say<"season.rear">(with<"rear">(season_.rear_kwh, unit::kilowatt_hour),
                               with<"low">(kwh_at(RearEnd::low) - front, unit::kilowatt_hour),
                               with<"high">(kwh_at(RearEnd::high) - front, unit::kilowatt_hour)));
    }

    void add_months() {
        const double ohm = circuit_.bank.typical_ohm();
        const double total = ohm + behind_.wire_ohm;
        const PlacedArray placed = sun_.placed(array_, PanelState::today);
        for (std::size_t m = 0; m < 12; ++m) {
            const int month = static_cast<int>(m + 1);
            if (!first_.month[m] || !has_sun(sun_, month)) continue;
            const NodeOptions options{.months = {month},
                                      .calendar_year = true,
                                      .exact = options_.exact,
                                      .irradiance_bins = 12,
                                      .temperature_bins = 4};
            const NodeSums sums =
                sums_over(with_nodes(placed, plane_nodes(sun_.all(), options)), total);
            season_.kwh_per_day[m] = sums.delivered_kwh * ohm / total / days_of_month[m];
            season_.mpp_kwh_per_day[m] = sums.mpp_kwh / days_of_month[m];
        }
    }

    const Circuit& circuit_;
    const UnlikeArray& array_;
    const SeasonOptions& options_;
    ArraySun sun_;
    SeasonWeather first_;
    NodeOptions node_options_;
    BehindWire behind_;
    EnergyCurve curve_;
    Season season_{};
};

}  // namespace

Season unlike_season(const Circuit& circuit, const Weather& weather, const Site& site,
                     const SeasonOptions& options) {
    return UnlikeSeason(circuit, weather, site, options).made(weather, site);
}

}  // namespace heatmatch
