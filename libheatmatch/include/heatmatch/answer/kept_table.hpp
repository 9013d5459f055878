#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// A choice that was kept, with its candidate.
struct KeptChoice {
    std::string name{};
    std::string place{};  //!< name of the installation
    const Candidate* candidate = nullptr;
    std::optional<double> tilt_deg{};
    std::optional<double> sun_pct{};   //!< as a share of the installation's sun
    std::string wire{};                //!< of the longest run that carries the array; may be empty
    std::optional<double> length_m{};  //!< of that run
    std::optional<double> k20_w_mk{};  //!< of the fill
    std::optional<double> record_low_c{};
};

/// Kept choices side by side: one column for each choice, one row for each number.
[[nodiscard]] Table kept_table(std::span<const KeptChoice> kept);
/// Text shown while no choice is kept.
[[nodiscard]] Sentence nothing_kept();

}  // namespace heatmatch
