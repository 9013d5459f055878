#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

inline constexpr double fill_cold_c = 20.0;  //!< reference temperature of a conductivity

/// Evidence on the conductivity of the fill from temperatures of sheath and store.
struct FillEvidence {
    std::size_t readings = 0;    //!< readings used; 0: none is usable
    double misfit_within = 0.0;  //!< with the conductivity constrained to the band of its medium
    double misfit_free = 0.0;
    FittedValue k20{};
    Sentences evidence{};
    Sentences remarks{};
};
[[nodiscard]] FillEvidence fill_evidence(const Circuit& circuit, const std::vector<Reading>& rows,
                                         const DiagnosisOptions& options);

}  // namespace heatmatch
