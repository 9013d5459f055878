#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// What readings allow to judge.
struct Judged {
    bool sun = false;       //!< a sun meter was read while the array was live
    bool panels = false;    //!< the same, or the short-circuit current as sun meter
    bool ratio = false;     //!< volts and amperes of the bank at the same moment
    bool elements = false;  //!< the same, or a resistance
};
[[nodiscard]] Judged judged_by(const FitProblem& problem);

/// Meaning of readings that fit the described circuit; empty where they judge elements and panels.
[[nodiscard]] Sentence partly_judged(const Judged& judged);

/// The fitted numbers of an explanation, with their bands. A share of a sun that was not read is
/// left out: the sun of each row was fitted beside it.
[[nodiscard]] std::vector<FittedValue> fitted_values(const FaultVariant& variant,
                                                     const VariantFit& fit, const Judged& judged);

/// One or two plain sentences: meaning, with the numbers, and what to do.
[[nodiscard]] Sentence fault_sentence(const FaultVariant& variant, const VariantFit& fit,
                                      const Circuit& circuit, const Judged& judged,
                                      const Parts* parts);

/// Readings beside the predictions of an explanation: voltage over current first.
[[nodiscard]] Sentences evidence_of(const FitProblem& problem, const VariantFit& fit);

/// Readings more than five errors from the prediction, which hardly affect its fit; empty if there
/// are none.
[[nodiscard]] Sentence wild_readings(const FitProblem& problem, const VariantFit& fit);

}  // namespace heatmatch
