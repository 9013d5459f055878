#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// Highest temperature of a part, against the limit of the candidate's margin.
struct PartPeak {
    Margin margin{};     //!< that margin, with the highest temperature as its value
    double hours = 0.0;  //!< time since the start
};

/// Nights and heat of one month, or of all days. Night is the time without sun on the panels.
struct DarkHours {
    int month = 0;      //!< 1 to 12; 0: all days
    double days = 0.0;  //!< simulated
    double available_kwh_day = 0.0;
    double delivered_kwh_day = 0.0;
    double to_space_kwh_day = 0.0;
    double dark_hours = 0.0;
    double above_target_hours = 0.0;           //!< part of them; 0 without a target
    double above_target_unheated_hours = 0.0;  //!< the same without the store
    double lowest_c = 0.0;                     //!< space temperature at night
    double lowest_unheated_c = 0.0;
    double lift_k = 0.0;           //!< by the store, mean over the night
    double required_lift_k = 0.0;  //!< target minus the space temperature without the store, mean
};

/// Results of a simulation of days.
struct DayAnswer {
    DarkHours all{};
    std::vector<DarkHours> months{};  //!< in order of time
    double dusk_lift_k = 0.0;         //!< at dusk, mean of the nights
    double dawn_lift_k = 0.0;         //!< at dawn, mean of the nights
    /// Hours after dusk until the store's heat output is half of that night's maximum, mean.
    std::optional<double> carry_over_h{};
    /// Highest rise of the mean night, and its hour of the day. The mean night is the mean of the
    /// nights at equal times after dusk.
    double most_lift_k = 0.0;
    double most_lift_hour = 0.0;
    /// Hours of the day from and until which the store warms the space noticeably (by 0.5 K) in
    /// the mean night; empty where it never does. No first hour: from dusk on.
    std::optional<double> warmer_from_hour{};
    std::optional<double> warmer_until_hour{};
    /// Hour of the day until which the lid is 4 K above the space.
    std::optional<double> lid_until_hour{};
    std::vector<PartPeak> peaks{};
    Sentences sentences{};  //!< the first states the result
};

/// Threshold for a noticeable rise [K].
inline constexpr double noticed_k = 0.5;
inline constexpr double warm_lid_k = 4.0;

[[nodiscard]] DayAnswer answer_of(const Candidate& candidate, const DayRun& run);

/// Highest temperature of every part in a run.
[[nodiscard]] std::vector<PartPeak> part_peaks(const Candidate& candidate, const DayRun& run);

}  // namespace heatmatch
