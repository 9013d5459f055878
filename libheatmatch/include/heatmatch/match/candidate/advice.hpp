#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The largest power of an element in its store, and changes that would bring a bank that is too
/// hot below its limits. The limits are those of the sheath margins; one change is tried at a time,
/// with everything else unchanged.
struct Advice {
    double element_w = 0.0;  //!< largest power of one element in cold, bright weather [W]
    /// Largest power of one element on every bright day [W]; empty where its limits are not known.
    std::optional<double> largest_element_w{};
    std::optional<double> largest_w_per_cm{};  //!< per heated length
    bool within_limit = false;
    /// Heated length of each element at which it is within the limits at this power [mm], with its
    /// present number of legs, and whether such legs fit.
    std::optional<double> heated_length_mm{};
    bool length_fits = false;
    /// Spacing of the elements at which they are within the limits [mm]; empty where none that fits
    /// is.
    std::optional<double> element_spacing_mm{};
    /// Number of elements within the limits when they share the power of the bank; empty if more
    /// than sixteen.
    std::optional<int> elements{};
    std::optional<int> legs{};  //!< number of legs into which an element that does not fit would
                                //!< have to be bent
    Sentences sentences{};
};

/// Without a store, its sizes or the element's lengths, the result has sentences only.
[[nodiscard]] Advice advise(const Candidate& candidate);

}  // namespace heatmatch
