#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"

namespace heatmatch {

/// Kinds of model error at a probe, each common to all its readings: a share of the rise, a share
/// of the part proportional to power, and the position around the axis.
inline constexpr std::size_t error_shapes = 3;
using ErrorShapes = std::array<double, error_shapes>;

/// Quantities to which the model errors at a reading are proportional [K].
struct ErrorSizes {
    double rise_k = 0.0;   //!< over the air
    double power_k = 0.0;  //!< the probe's largest rise, times this power over the largest
    double place_k = 0.0;  //!< spread around the axis, as a standard deviation
};
/// The last of them for a probe in the present field.
[[nodiscard]] double place_error_k(const BedField& bed, const Probe& probe);
/// One standard error of each kind at a reading, by the kind of its probe [K].
[[nodiscard]] ErrorShapes model_error_k(ProbePlace place, const ErrorSizes& sizes);

/// Covariance of readings around a model: independent noise of each reading, and the model error of
/// each probe, common to its readings: `C = s² I + sum V V'`. A reading has the weight of its own
/// variance, `w = 1/(s² + |V|²)`: covariances are not known well enough for weights.
class ModelError {
  public:
    /// Errors for each reading, and the number of readings of each probe.
    ModelError(std::vector<ErrorShapes> shapes, std::vector<std::size_t> counts);

    /// The larger position error of both, for each reading. In a fill of infinite conductivity
    /// spots do not differ, and without this a fit would prefer that.
    void widen_place(const ModelError& other);
    /// Noise from the second differences of residuals, by the median: `median(d²)/(6 · 0.455)`;
    /// model errors change more slowly.
    void take_noise_of(std::span<const double> residuals);
    /// `a' W b`.
    [[nodiscard]] double weighed(std::span<const double> a, std::span<const double> b) const;
    /// `a' W C W b`, the covariance of two weighted sums.
    [[nodiscard]] double spread(std::span<const double> a, std::span<const double> b) const;

  private:
    [[nodiscard]] double weight(std::size_t reading) const;

    std::vector<ErrorShapes> shapes_;
    std::vector<std::size_t> counts_;
    double noise_k2_ = 1.0;
};

}  // namespace heatmatch
