#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

/// Explanations by elements other than described: of another resistance, all equal, which is
/// fitted; or as described but in another number.
void add_other_banks(std::vector<FaultVariant>& variants, const Circuit& circuit);

/// Meaning of another element, with elements of the catalog whose cold resistance agrees with the
/// fit.
[[nodiscard]] Sentence another_element_sentence(const Circuit& circuit, const FittedValue& ohms,
                                                const Parts* parts);

/// Voltage over current as read, beside the described resistance; empty where they were not read.
[[nodiscard]] Sentence bank_ohms_of(const std::vector<FitRow>& rows, const Bank& bank);

}  // namespace heatmatch
