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

/// How the controls behave: as they should, the thermostat stuck closed, or what breaks the circuit
/// welded shut, so that neither thermostat nor limit can.
enum class SwitchCase { works, thermostat_welded, breaker_welded };
inline constexpr auto switch_case_words =
    std::to_array<std::string_view>({"works", "thermostat welded", "breaker welded"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SwitchCase) {
    return switch_case_words;
}

/// Heat drawn from the whole store by a fan through pipes, or a loop, to the space.
struct TakeOff {
    double w_k = 0.0;          //!< for a kelvin between the bed and the air; 0: none [W/K]
    double from_hour = 0.0;    //!< of the day
    double until_hour = 24.0;  //!< before from_hour: over midnight
};

/// How days are lived through.
struct DayOptions {
    DaySpan span{};
    double electrical_step_s = 60.0;
    double thermal_step_s = 300.0;
    int warm_up_days = 3;             //!< the first day, so many times before the first
    std::optional<double> start_c{};  //!< of the store; the air around it unless told [°C]
    ConductivityEnd conductivity = ConductivityEnd::typical;
    SwitchCase switches = SwitchCase::works;
    TakeOff take_off{};
    /// Air around the store, whatever the weather: no heat reaches a space [°C].
    std::optional<double> air_around_c{};
    Progress progress{};  //!< called after every thermal step
};

/// What was, at the end of every thermal step; powers are its means. Lists of one length.
struct DaySeries {
    std::vector<double> hours{};            //!< since the beginning
    std::vector<double> irradiance_w_m2{};  //!< on the cells
    std::vector<double> available_w{};      //!< at the maximum power point
    std::vector<double> power_w{};          //!< into the bank
    std::vector<double> bank_v{};
    std::vector<double> bank_a{};
    std::vector<double> sheath_c{};
    std::vector<double> coil_c{};
    std::vector<double> terminal_c{};  //!< empty where it is not known
    std::vector<double> bed_mean_c{};
    std::vector<double> wall_c{};           //!< its hottest spot
    std::vector<double> lid_c{};            //!< the same
    std::vector<double> released_w{};       //!< that leaves the store, by its walls and by the fan
    std::vector<double> to_space_w{};       //!< of that, what reaches the space
    std::vector<double> space_c{};          //!< air around the store where there is no space
    std::vector<double> space_without_c{};  //!< the same without the store
    std::vector<double> outside_c{};
    std::vector<std::uint8_t> month{};
};

/// Energy of all days [kWh].
struct DayEnergy {
    double available_kwh = 0.0;  //!< at the maximum power point
    double in_kwh = 0.0;         //!< into the bank
    double wire_kwh = 0.0;       //!< lost in wire and joints
    double stored_kwh = 0.0;     //!< more in the store than at the beginning
    double to_space_kwh = 0.0;   //!< from the store to the space, by its walls and the fan
    double outside_kwh = 0.0;    //!< from the store to elsewhere
    double steam_kwh = 0.0;      //!< of that, from boiling water
    /// What the balance does not account for, over what came in; 0 is exact.
    double unbalanced_share = 0.0;
};

/// What a control did.
enum class SwitchAction { opens, closes, cannot_open };
inline constexpr auto switch_action_words =
    std::to_array<std::string_view>({"opens", "closes", "cannot open"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SwitchAction) {
    return switch_action_words;
}

/// A control that acted.
struct SwitchEvent {
    double hours = 0.0;    //!< since the beginning
    std::string device{};  //!< that sensed
    SwitchAction what = SwitchAction::opens;
};

/// How the heat of the fill was followed: a field in radius and height, or one temperature.
enum class BedModel { r_z_field, water };
inline constexpr auto bed_model_words = std::to_array<std::string_view>({"r-z field", "water"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(BedModel) {
    return bed_model_words;
}

/// Days lived through.
struct DayRun {
    std::string title{};
    double days = 0.0;
    double first_hour = 0.0;   //!< of the day, by the sun's mean time [h]
    bool heats_space = false;  //!< the store stands in a space whose losses are known
    DaySeries series{};
    DayEnergy energy{};
    std::vector<SwitchEvent> events{};
    BedModel bed_model = BedModel::r_z_field;
    Sentences remarks{};
    std::vector<Assumption> assumed{};

    [[nodiscard]] double hour_of_day(std::size_t step) const;
};

/// Lives a candidate through days: sun and cells row by row, the bank's ohms at the temperature of
/// its coils and the wires' at their current, the store as a field of heat in radius and height
/// (water: one temperature), thermostat and limit as far as they can break direct current, the
/// space by its losses. Rows of the weather hold for their whole step. Parts have the fill's
/// typical conductivity unless told: margins judge its worst end. The space warms by the store
/// alone: sun through its covers, ground and other heat are not counted. Throws InvalidInput where
/// the store, its sizes or the element's lengths are not known, or the legs do not fit;
/// Interrupted where the progress callback asks to stop.
[[nodiscard]] DayRun simulate_day(const Candidate& candidate, const DayWeather& weather,
                                  const DayOptions& options = {});
[[nodiscard]] DayRun simulate_day(const Candidate& candidate, const Weather& weather,
                                  const DayOptions& options = {});

}  // namespace heatmatch
