#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

inline constexpr double fill_cold_c = 20.0;  //!< that a conductivity is told for

/// What the temperatures of sheath and store say about the conductivity of the fill.
struct FillEvidence {
    std::size_t readings = 0;    //!< that were used; 0: none can be
    double misfit_within = 0.0;  //!< with the conductivity held by the band of its medium
    double misfit_free = 0.0;
    FittedValue k20{};
    Sentences evidence{};
    Sentences remarks{};
};
[[nodiscard]] FillEvidence fill_evidence(const Circuit& circuit, const std::vector<Reading>& rows,
                                         const DiagnosisOptions& options);

}  // namespace heatmatch
