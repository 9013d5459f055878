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
    double low = 0.0;  //!< of the joint 99 % region of both numbers, the model's error in it
    double high = 0.0;
};

/// What a log tells about a store.
struct Calibration {
    Fitted k20_w_mk{};               //!< conductivity of the fill at 20 °C [W/mK]
    Fitted loss_factor{};            //!< heat loss over what the store's description gives
    double correlation = 0.0;        //!< between the two
    double residual_k = 0.0;         //!< root mean square of what is left [K]
    double residual_before_k = 0.0;  //!< with the numbers as they were [K]
    std::size_t readings = 0;
    std::string medium{};  //!< id
    double loss_factor_before = 1.0;
    Sentences sentences{};
    Sentences remarks{};

    /// The installation with both as `measured`: the medium given inline, the store's loss_factor.
    [[nodiscard]] Installation applied_to(Installation installation, const Parts& parts) const;
};

/// Fits conductivity and heat loss of the store to a log by least squares (Gauss and Newton on the
/// field in radius and height). A reading is weighed by `1/(s² + |V|²)`: its noise s, and the
/// model's error V there, by kind of probe a share of the rise, of the power and of what spots
/// around the axis differ by, each one over all readings of a probe. Bands are `3.03 sigma` (the
/// joint 99 % region of two numbers) of `N^-1 J'W (s² I + sum V V') W J N^-1`, larger where the log
/// fits worse than that explains, and never narrower than the field's own error, 3 % of the
/// conductivity and 6 % of the loss. The shares are those of 40 logs made in three dimensions;
/// tests judge 100 others. A probe that lies at another radius or height than told is not in it.
/// What is described counts as known within a factor of two (from memory): a log that says nothing
/// of a number leaves it there. The store counts as of one temperature at the first row, that of
/// its probes. Throws InvalidInput for a log that cannot tell (too few readings, no heat), and as
/// simulate_day() does; Interrupted where the progress callback asks to stop. How many turns a fit
/// takes is not known before: the share rises ever more slowly.
[[nodiscard]] Calibration calibrate(const Candidate& candidate, const StoreLog& log,
                                    const Progress& progress = {});

}  // namespace heatmatch
