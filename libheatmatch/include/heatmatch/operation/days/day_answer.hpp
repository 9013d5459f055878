#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// The highest that a part reached, judged against the limit of the candidate's margin.
struct PartPeak {
    Margin margin{};     //!< that margin, with what was reached as its value
    double hours = 0.0;  //!< when, since the beginning
};

/// Dark hours and heat of one month, or of all days. Dark is without sun on the panels.
struct DarkHours {
    int month = 0;      //!< 1 to 12; 0: all days
    double days = 0.0;  //!< lived through
    double available_kwh_day = 0.0;
    double in_kwh_day = 0.0;
    double to_space_kwh_day = 0.0;
    double dark_hours = 0.0;
    double above_target_hours = 0.0;          //!< of them; 0 without a target
    double above_target_without_hours = 0.0;  //!< the same without the store
    double lowest_c = 0.0;                    //!< of the space in the dark
    double lowest_without_c = 0.0;
    double lift_k = 0.0;    //!< by the store, mean of the dark hours
    double wanted_k = 0.0;  //!< that the target lies above the space without it, mean
};

/// What a run through days answers.
struct DayAnswer {
    DarkHours all{};
    std::vector<DarkHours> months{};  //!< in the order of time
    double dusk_lift_k = 0.0;         //!< at the beginning of the dark, mean of the nights
    double dawn_lift_k = 0.0;         //!< at its end
    /// Hours after dusk that the store gives off half as much as at its best in that night, mean.
    std::optional<double> carry_over_h{};
    /// Hour of the day until which the space is noticeably (0.5 K) warmer by the store, mean of the
    /// nights; nothing where it never is.
    std::optional<double> noticed_until_hour{};
    /// The same for the lid, 4 K above the space.
    std::optional<double> lid_until_hour{};
    std::vector<PartPeak> peaks{};
    Sentences sentences{};  //!< the first says what it comes to
};

/// What counts as noticed [K].
inline constexpr double noticed_k = 0.5;
inline constexpr double warm_lid_k = 4.0;

[[nodiscard]] DayAnswer answer_of(const Candidate& candidate, const DayRun& run);

/// The highest of every part in a run.
[[nodiscard]] std::vector<PartPeak> part_peaks(const Candidate& candidate, const DayRun& run);

}  // namespace heatmatch
