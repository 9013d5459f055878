#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

/// Explanations by elements that are not those described: others, alike among themselves, whose
/// ohms are fitted; or as described but more or fewer of them.
void add_other_banks(std::vector<FaultVariant>& variants, const Circuit& circuit);

/// What another element means, with those of the catalog whose cold ohms hold what was fitted.
[[nodiscard]] Sentence another_element_sentence(const Circuit& circuit, const FittedValue& ohms,
                                                const Parts* parts);

/// Volts over amperes that were read beside the ohms described; empty where they were not read.
[[nodiscard]] Sentence bank_ohms_of(const std::vector<FitRow>& rows, const Bank& bank);

}  // namespace heatmatch
