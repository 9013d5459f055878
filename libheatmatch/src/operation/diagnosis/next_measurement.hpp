#pragma once

#include "reading_fit.hpp"

#include <vector>

namespace heatmatch {

/// An explanation with its fit, for the next measurement.
struct Explained {
    const FaultVariant* variant = nullptr;
    const VariantFit* fit = nullptr;
};

/// Measurements not yet made, by the difference between the explanations.
[[nodiscard]] std::vector<NextMeasurement> next_measurements(
    const FitProblem& problem, const std::vector<Explained>& explanations, const Circuit& circuit,
    const DiagnosisOptions& options);

/// Measurement that separates a different fill conductivity from a fault of the circuit.
[[nodiscard]] NextMeasurement fill_measurement();

}  // namespace heatmatch
