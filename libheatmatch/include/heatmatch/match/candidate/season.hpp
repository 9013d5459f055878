#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Weather prepared for a ranking: condensed over the season, with cloud within the step as a
/// bound, and by month.
struct SeasonWeather {
    std::vector<int> months{};  //!< months of the season in the weather; empty: the weather has no
                                //!< months
    double days = 0.0;          //!< of the season
    double brightest_w_m2 = 0.0;  //!< of any row of the weather, in the season or not
    WeatherNodes season{};
    std::optional<WeatherNodes> split{};  //!< cloud within the step, worst case
    std::array<std::optional<WeatherNodes>, 12> month{};
    Sentences remarks{};
    std::vector<Assumption> assumed{};
    RearShare rear{};                        //!< share of rear light counted in it
    std::vector<SeasonWeather> two_sided{};  //!< the same for each such share of the panels
    /// At the low and the high end of rear light, and both again with cloud within the step at its
    /// worst case; empty without rear light.
    std::vector<WeatherNodes> rear_ends{};

    /// The weather for a panel: with rear light if the panel is bifacial.
    [[nodiscard]] const SeasonWeather& for_panel(const PanelInService& panel) const;
};

/// Condenses weather for a season of those months, or for the whole year if there are none. With
/// `exact` every sunlit row is kept. Throws InvalidInput where the weather has no sun in the
/// season.
[[nodiscard]] SeasonWeather season_weather(const Weather& weather, std::span<const int> months,
                                           bool exact = false);

/// Options for condensing the weather of a season; without months, all rows are used.
[[nodiscard]] NodeOptions season_node_options(std::vector<int> months, bool exact);

/// Irradiance at which margins are judged [W/m2]: that of the site, or the brightest row of the
/// weather where that is higher. bright_remark() reports the second case, and is otherwise empty.
[[nodiscard]] double judged_irradiance_w_m2(const SeasonWeather& weather, const Site& site);
[[nodiscard]] Sentence bright_remark(const SeasonWeather& weather, const Site& site);

/// Energy curves of one panel in its present condition.
struct SeasonCurves {
    EnergyCurve season{};
    std::optional<EnergyCurve> split{};
    std::array<std::optional<EnergyCurve>, 12> month{};
    std::optional<EnergyCurve> front{};      //!< without rear light, where there is any
    std::vector<EnergyCurve> rear_ends{};    //!< at the ends of rear light, low and high first
    double mpp_kwh = 0.0;                    //!< of the season
    double stc_match_ohm = 0.0;              //!< Vmp/Imp of the panel in its present condition
    std::array<double, 12> mpp_month_kwh{};  //!< of each month
};
/// `series`: panels in each string, where its blocking diode matters.
[[nodiscard]] SeasonCurves season_curves(const PanelInService& panel, const SeasonWeather& weather,
                                         VectorWidth width = VectorWidth::automatic,
                                         int series = 1);

/// Energy that a circuit delivers over the season to its bank, after wire losses.
struct Season {
    std::vector<int> months{};
    double days = 0.0;
    double kwh_low = 0.0;
    double kwh = 0.0;  //!< typical [kWh]
    double kwh_high = 0.0;
    double rear_kwh = 0.0;                     //!< part of it from rear light
    double mpp_kwh = 0.0;                      //!< at the maximum power point all the time
    std::array<double, 12> kwh_per_day{};      //!< each month, in the season or not
    std::array<double, 12> mpp_kwh_per_day{};  //!< 0 where the weather has no such month
    double best_ohm = 0.0;                     //!< best load resistance for this array and season
    /// The same with cloud within the step at its worst case; empty where that is not known [ohm].
    std::optional<double> best_ohm_cloud{};
    double stc_match_ohm = 0.0;  //!< present Vmp/Imp of the array, minus its wire
    double best_kwh = 0.0;       //!< with a bank of `best_ohm`
    double stc_match_kwh = 0.0;  //!< with a bank of `stc_match_ohm`; 0 where that is 0
    /// Share of heat lost with a bank of `stc_match_ohm` against the best one, with cloud within
    /// the step at its worst case; empty where that is not known.
    std::optional<double> stc_match_loss_cloud{};
    double near_short_circuit_share = 0.0;  //!< share of the sunlit hours
    double element_power_w = 0.0;           //!< largest of one element in the season [W]
    bool cloud_band = false;                //!< low and high include cloud within the step
    std::optional<double> price_per_kwh{};  //!< purchase price per kWh of one season's heat
    Sentences remarks{};                    //!< of the weather: gaps, repairs
    std::vector<Assumption> assumed{};

    /// Share of the energy at the maximum power point that reaches the bank.
    [[nodiscard]] double harvest_fraction() const;
    [[nodiscard]] double mean_kwh_per_day() const;
    /// Why the best resistance of the season differs from Vmp/Imp, in one sentence with the
    /// numbers, and where cloud within the step would shift it.
    [[nodiscard]] Sentence best_ohm_sentence() const;
    /// Share of heat lost with a bank of `stc_match_ohm` against the best one.
    [[nodiscard]] double stc_match_loss() const;
    /// The same in one sentence with the numbers; empty where the wire alone has a higher
    /// resistance.
    [[nodiscard]] Sentence stc_match_loss_sentence() const;
};

/// The band includes the ends of panel current and element resistance, and cloud within the step
/// where it is known. A panel's current factor c needs no new curve: E(R) at c times the current is
/// c E(c R).
[[nodiscard]] Season season_of(const Circuit& circuit, const SeasonCurves& curves,
                               const SeasonWeather& weather, std::optional<double> price_to_buy);

}  // namespace heatmatch
