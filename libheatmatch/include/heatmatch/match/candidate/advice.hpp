#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What an element may take in its store, and what would let a bank that is too hot pass: computed
/// with the same limits as the margins of the sheath, one change at a time, the others as they are.
struct Advice {
    double element_w = 0.0;  //!< largest of one element in bright cold [W]
    /// That one element may take every bright day [W]; nothing where its limits are not known.
    std::optional<double> largest_element_w{};
    std::optional<double> largest_w_per_cm{};  //!< of heated length
    bool passes = false;
    /// Heated length of each element that would pass at this power [mm], in the legs it has, and
    /// whether such legs would fit.
    std::optional<double> heated_length_mm{};
    bool length_fits = false;
    /// Spacing of the elements that would pass [mm]; nothing where none that fits does.
    std::optional<double> element_spacing_mm{};
    /// Elements that would pass sharing the power of the bank; nothing up to sixteen.
    std::optional<int> elements{};
    std::optional<int> legs{};  //!< that an element which does not fit would have to be bent into
    Sentences sentences{};
};

/// Nothing to say without a store, its sizes or the element's lengths: then only sentences.
[[nodiscard]] Advice advise(const Candidate& candidate);

}  // namespace heatmatch
