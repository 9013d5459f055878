#pragma once

#include "reading_fit.hpp"

#include <vector>

namespace heatmatch {

/// An explanation with its fit, as the next measurement compares it.
struct Explained {
    const FaultVariant* variant = nullptr;
    const VariantFit* fit = nullptr;
};

/// What was not read yet, by how far the explanations differ in it.
[[nodiscard]] std::vector<NextMeasurement> next_measurements(
    const FitProblem& problem, const std::vector<Explained>& explanations, const Circuit& circuit,
    const DiagnosisOptions& options);

/// What tells a fill that conducts otherwise from a fault of the circuit.
[[nodiscard]] NextMeasurement fill_measurement();

}  // namespace heatmatch
