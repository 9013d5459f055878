#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// A fitted number with its uncertainty.
struct Fitted {
    double value = 0.0;
    double standard_error = 0.0;
    double low = 0.0;  //!< of the joint 99 % region of both numbers, model error included
    double high = 0.0;
};

/// Properties of a store fitted to a log.
struct Calibration {
    Fitted k20_w_mk{};               //!< conductivity of the fill at 20 °C [W/mK]
    Fitted loss_factor{};            //!< heat loss over that of the store's description
    double correlation = 0.0;        //!< between the two
    double residual_k = 0.0;         //!< root mean square residual [K]
    double residual_before_k = 0.0;  //!< with the numbers before the fit [K]
    std::size_t readings = 0;
    std::string medium{};  //!< id
    double loss_factor_before = 1.0;
    Sentences sentences{};
    Sentences remarks{};

    /// The installation with both marked `measured`: the medium given inline, the store's
    /// loss_factor.
    [[nodiscard]] Installation applied_to(Installation installation, const Parts& parts) const;
};

/// Fits conductivity and heat loss of the store to a log by least squares (Gauss and Newton on the
/// field in radius and height). A reading has the weight `1/(s² + |V|²)`: its noise s, and the
/// error V of the model there. By kind of probe V is a share of the rise, of the power and of the
/// spread around the axis, each common to all readings of a probe. Bands are `3.03 sigma` (the
/// joint 99 % region of two numbers) of `N^-1 J'W (s² I + sum V V') W J N^-1`. They are wider where
/// the residuals are larger than that explains, and never narrower than the error of the field, 3 %
/// of the conductivity and 6 % of the loss. The shares are those of 40 logs simulated in three
/// dimensions; tests check 100 others. An error in the stated radius or height of a probe is not
/// included.
/// Described values count as known within a factor of two (from memory): a log without information
/// on a number leaves it unchanged. The store has a uniform temperature at the first row, that of
/// its probes. Throws InvalidInput for a log that is insufficient (too few readings, no heat), and
/// as simulate_day() does; Interrupted where the progress callback requests a stop. The number of
/// iterations is not known in advance, so the share done approaches 1 ever more slowly.
[[nodiscard]] Calibration calibrate(const Candidate& candidate, const StoreLog& log,
                                    const Progress& progress = {});

}  // namespace heatmatch
