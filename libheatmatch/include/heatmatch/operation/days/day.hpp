#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/parallel.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/operation/days/day_weather.hpp"

namespace heatmatch {

/// State of the controls: all working, the thermostat stuck closed, or the breaking contacts welded
/// closed, so that neither thermostat nor limit opens the circuit.
enum class SwitchCase { works, thermostat_welded, breaker_welded };
inline constexpr auto switch_case_words =
    std::to_array<std::string_view>({"works", "thermostat welded", "breaker welded"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SwitchCase) {
    return switch_case_words;
}

/// Heat extraction from the whole store to the space, by a fan through pipes or a loop.
struct HeatExtraction {
    double w_k = 0.0;          //!< per kelvin between the bed and the air; 0: none [W/K]
    double from_hour = 0.0;    //!< hour of the day
    double until_hour = 24.0;  //!< before from_hour: past midnight
};

/// Options of a simulation of days.
struct DayOptions {
    DaySpan span{};
    double electrical_step_s = 60.0;
    double thermal_step_s = 300.0;
    int warm_up_days = 3;             //!< repetitions of the first day before the start
    std::optional<double> start_c{};  //!< of the store; default: the air around it [°C]
    ConductivityEnd conductivity = ConductivityEnd::typical;
    SwitchCase switches = SwitchCase::works;
    HeatExtraction extraction{};
    /// Air around the store, independent of the weather: no heat reaches a space [°C].
    std::optional<double> air_around_c{};
    Progress progress{};  //!< called after every thermal step
};

/// One element of an unlike bank in the same steps.
struct ElementSeries {
    int number = 1;       //!< in the order of the bank, from 1
    std::string title{};  //!< subject of its margins
    std::vector<double> power_w{};
    std::vector<double> sheath_c{};
    std::vector<double> coil_c{};
    std::vector<double> terminal_c{};  //!< empty if not known
};

/// Results at the end of every thermal step; power is the mean of the step. Lists of one length.
struct DaySeries {
    std::vector<double> hours{};            //!< since the start
    std::vector<double> irradiance_w_m2{};  //!< on the cells
    std::vector<double> available_w{};      //!< at the maximum power point
    std::vector<double> power_w{};          //!< into the bank
    std::vector<double> bank_v{};
    std::vector<double> bank_a{};
    std::vector<double> sheath_c{};
    std::vector<double> coil_c{};
    std::vector<double> terminal_c{};  //!< empty if not known
    /// Of each unlike element, then the three lists above have the hottest; empty for equal ones.
    std::vector<ElementSeries> elements{};
    std::vector<double> bed_mean_c{};
    std::vector<double> wall_c{};            //!< its hottest spot
    std::vector<double> lid_c{};             //!< its hottest spot
    std::vector<double> released_w{};        //!< out of the store, through its walls and by the fan
    std::vector<double> to_space_w{};        //!< part of it that reaches the space
    std::vector<double> space_c{};           //!< air around the store where there is no space
    std::vector<double> space_unheated_c{};  //!< the same without the store
    std::vector<double> outside_c{};
    std::vector<std::uint8_t> month{};
};

/// Energy of all days [kWh].
struct DayEnergy {
    double available_kwh = 0.0;  //!< at the maximum power point
    double delivered_kwh = 0.0;  //!< into the bank
    double wire_kwh = 0.0;       //!< lost in wire and joints
    double stored_kwh = 0.0;     //!< increase of heat in the store since the start
    double to_space_kwh = 0.0;   //!< from the store to the space, through its walls and by the fan
    double outside_kwh = 0.0;    //!< from the store to elsewhere
    double steam_kwh = 0.0;      //!< of that, from boiling water
    /// Remainder of the energy balance over the supplied energy; 0 is exact.
    double unbalanced_share = 0.0;
};

/// Action of a control.
enum class SwitchAction { opens, closes, cannot_open };
inline constexpr auto switch_action_words =
    std::to_array<std::string_view>({"opens", "closes", "cannot open"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SwitchAction) {
    return switch_action_words;
}

/// An event of a control.
struct SwitchEvent {
    double hours = 0.0;    //!< since the start
    std::string device{};  //!< device that sensed it
    SwitchAction what = SwitchAction::opens;
};

/// Thermal model of the fill: a field in radius and height, or one temperature.
enum class BedModel { r_z_field, water };
inline constexpr auto bed_model_words = std::to_array<std::string_view>({"r-z field", "water"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(BedModel) {
    return bed_model_words;
}

/// Result of a simulation of days.
struct DayRun {
    std::string title{};
    double days = 0.0;
    double first_hour = 0.0;   //!< hour of the day, by mean solar time [h]
    bool heats_space = false;  //!< the store is in a space with a known heat loss
    DaySeries series{};
    DayEnergy energy{};
    std::vector<SwitchEvent> events{};
    BedModel bed_model = BedModel::r_z_field;
    Sentence sun_of_month{};  //!< sun of these days beside the mean of their month; empty if alike
    int circuits = 1;         //!< that heat the store; its heat is that of all
    Sentences remarks{};
    std::vector<Assumption> assumed{};

    [[nodiscard]] double hour_of_day(std::size_t step) const;
};

/// Simulates a candidate over consecutive days: irradiance and cell temperature row by row, the
/// bank's resistance at the temperature of its coils and that of the wires at their current, the
/// store as a temperature field in radius and height (water: one temperature), thermostat and limit
/// as far as they can break direct current, the space by its heat loss. Each row of the weather
/// applies to its whole step. By default parts have the typical conductivity of the fill, while
/// margins use its worst end. Only the store warms the space: sun through its covers, ground and
/// other heat are not counted. Throws InvalidInput where the store, its sizes or the element's
/// lengths are not known, where the legs do not fit, and for one of several circuits of a store;
/// Interrupted where the progress callback requests a stop.
[[nodiscard]] DayRun simulate_day(const Candidate& candidate, const DayWeather& weather,
                                  const DayOptions& options = {});
[[nodiscard]] DayRun simulate_day(const Candidate& candidate, const Weather& weather,
                                  const DayOptions& options = {});

/// The same for all circuits of one store, as assess_circuits() returns them: each with its own
/// sun, wire, controls and sheath, all in one field. Store and space are common: each run reports
/// them, and its energy in the store, to the space and outside is that of all circuits. One weather
/// for all, or one for each circuit with the same times. Throws InvalidInput as simulate_day()
/// does, and for circuits that were not assessed together.
[[nodiscard]] std::vector<DayRun> simulate_circuits(std::span<const Candidate> circuits,
                                                    std::span<const DayWeather> weathers,
                                                    const DayOptions& options = {});
/// The same in one weather: each circuit has that of the plane and shade of its group.
[[nodiscard]] std::vector<DayRun> simulate_circuits(std::span<const Candidate> circuits,
                                                    const Weather& weather,
                                                    const DayOptions& options = {});

}  // namespace heatmatch
