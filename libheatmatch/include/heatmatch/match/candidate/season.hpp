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

/// Weather made ready for a ranking: condensed over the season, with cloud within the step as a
/// bound beside it, and month by month.
struct SeasonWeather {
    std::vector<int> months{};  //!< of the season that the weather covers; empty: it has no months
    double days = 0.0;          //!< of the season
    double brightest_w_m2 = 0.0;  //!< of any row of the weather, season or not
    WeatherNodes season{};
    std::optional<WeatherNodes> split{};  //!< cloud within the step at its worst
    std::array<std::optional<WeatherNodes>, 12> month{};
    Sentences remarks{};
    std::vector<Assumption> assumed{};
    RearShare rear{};                        //!< of the light on the backs that counts in it
    std::vector<SeasonWeather> two_sided{};  //!< the same for each such share among the panels
    /// At the low and the high end of the light on the backs, and both again with cloud within the
    /// step at its worst; empty where none counts.
    std::vector<WeatherNodes> rear_ends{};

    /// The one for a panel: with rear light if the panel is bifacial.
    [[nodiscard]] const SeasonWeather& for_panel(const PanelInService& panel) const;
};

/// Condenses weather for a season of those months, none for the whole year. With `exact` every
/// sunlit row stays. Throws InvalidInput where the weather has no sun in the season.
[[nodiscard]] SeasonWeather season_weather(const Weather& weather, std::span<const int> months,
                                           bool exact = false);

/// How the weather of a season is condensed, its months none for all rows.
[[nodiscard]] NodeOptions season_node_options(std::vector<int> months, bool exact);

/// The sun that margins are judged at [W/m2]: that of the site, or the brightest of the weather
/// where it has more; and what to say then, else empty.
[[nodiscard]] double judged_irradiance_w_m2(const SeasonWeather& weather, const Site& site);
[[nodiscard]] Sentence bright_remark(const SeasonWeather& weather, const Site& site);

/// Energy curves of one panel as it is today.
struct SeasonCurves {
    EnergyCurve season{};
    std::optional<EnergyCurve> split{};
    std::array<std::optional<EnergyCurve>, 12> month{};
    std::optional<EnergyCurve> front{};      //!< without the light on the backs, where there is any
    std::vector<EnergyCurve> rear_ends{};    //!< at the ends of that light, low and high first
    double mpp_kwh = 0.0;                    //!< of the season
    double noon_ohm = 0.0;                   //!< Vmp/Imp of the panel as it is today
    std::array<double, 12> mpp_month_kwh{};  //!< of each month
};
[[nodiscard]] SeasonCurves season_curves(const PanelInService& panel, const SeasonWeather& weather,
                                         VectorWidth width = VectorWidth::automatic);

/// What a circuit delivers over the season, into its bank and behind its wire.
struct Season {
    std::vector<int> months{};
    double days = 0.0;
    double kwh_low = 0.0;
    double kwh = 0.0;  //!< typical [kWh]
    double kwh_high = 0.0;
    double rear_kwh = 0.0;                     //!< of it by light on the backs
    double mpp_kwh = 0.0;                      //!< at the maximum power point all the time
    std::array<double, 12> kwh_per_day{};      //!< of each month, the season's or not
    std::array<double, 12> mpp_kwh_per_day{};  //!< 0 where the weather has no such month
    double best_ohm = 0.0;                     //!< of a bank for this array and season
    /// The same with cloud within the step at its worst; nothing where that is not known [ohm].
    std::optional<double> best_ohm_cloud{};
    double noon_ohm = 0.0;  //!< Vmp/Imp of the array today, less its wire
    double best_kwh = 0.0;  //!< into a bank of `best_ohm`
    double noon_kwh = 0.0;  //!< into a bank of `noon_ohm`; 0 where that is 0
    /// What ohms matched in full sun lose with cloud within the step at its worst, against the best
    /// there: a share; nothing where that is not known.
    std::optional<double> noon_loss_cloud{};
    double near_short_share = 0.0;          //!< of the sunlit hours
    double element_power_w = 0.0;           //!< largest of one element in the season [W]
    bool cloud_band = false;                //!< low and high hold cloud within the step
    std::optional<double> price_per_kwh{};  //!< price to buy over one season's heat
    Sentences remarks{};                    //!< of the weather: gaps, repairs
    std::vector<Assumption> assumed{};

    /// Share of the energy at the maximum power point that reaches the bank.
    [[nodiscard]] double harvest_fraction() const;
    [[nodiscard]] double mean_kwh_per_day() const;
    /// Why the best ohms of the season are not those of noon, in one sentence with the numbers, and
    /// where cloud within the step would move them.
    [[nodiscard]] Sentence best_ohm_sentence() const;
    /// What ohms matched in full sun lose of the heat of the best ones, a share.
    [[nodiscard]] double noon_loss() const;
    /// The same in one sentence with the numbers; empty where the wire alone has more ohms.
    [[nodiscard]] Sentence noon_loss_sentence() const;
};

/// The band takes the ends of panel current and element ohms, and of cloud within the step where it
/// is known. The panel's current factor c needs no new curve: E(R) of c times the current is
/// c E(c R).
[[nodiscard]] Season season_of(const Circuit& circuit, const SeasonCurves& curves,
                               const SeasonWeather& weather, std::optional<double> price_to_buy);

}  // namespace heatmatch
