#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"

namespace heatmatch {

/// Ways in which a model may be wrong where a probe sits, each over all its readings at once: by a
/// share of the rise, by a share of what follows the power, by where around the axis it sits.
inline constexpr std::size_t error_shapes = 3;
using ErrorShapes = std::array<double, error_shapes>;

/// What the model's errors at a reading go with [K].
struct ErrorSizes {
    double rise_k = 0.0;   //!< over the air
    double power_k = 0.0;  //!< the probe's largest rise, times this power over the largest
    double place_k = 0.0;  //!< what spots around the axis differ by, as a standard deviation
};
/// The last of them for a probe in a field as it is now.
[[nodiscard]] double place_error_k(const BedField& bed, const Probe& probe);
/// One standard error of each at a reading, by the kind of its probe [K].
[[nodiscard]] ErrorShapes model_error_k(ProbePlace place, const ErrorSizes& sizes);

/// What stands between readings and a model: noise of each reading by itself, and the model's error
/// at each probe, one over all its readings: `C = s² I + sum V V'`. Readings are weighed by their
/// own share of it, `w = 1/(s² + |V|²)`: what both together say is not known well enough to weigh
/// by.
class ModelError {
  public:
    /// Errors reading by reading, and how many readings each probe has.
    ModelError(std::vector<ErrorShapes> shapes, std::vector<std::size_t> counts);

    /// The larger errors of place of both, reading by reading: in a fill that conducts without end
    /// spots do not differ, and a fit would find that likely.
    void widen_place(const ModelError& other);
    /// Noise from how far a residual lies off the middle of its neighbours, in the middle of all:
    /// `median(d²)/(6 · 0.455)`; what the model errs by changes more slowly.
    void take_noise_of(std::span<const double> residuals);
    /// `a' W b`.
    [[nodiscard]] double weighed(std::span<const double> a, std::span<const double> b) const;
    /// `a' W C W b`, how far two weighed sums err together.
    [[nodiscard]] double spread(std::span<const double> a, std::span<const double> b) const;

  private:
    [[nodiscard]] double weight(std::size_t reading) const;

    std::vector<ErrorShapes> shapes_;
    std::vector<std::size_t> counts_;
    double noise_k2_ = 1.0;
};

}  // namespace heatmatch
