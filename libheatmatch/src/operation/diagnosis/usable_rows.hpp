#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/meter/readings.hpp"

namespace heatmatch {

/// A reading with the errors of its meters.
[[nodiscard]] FitRow fit_row(const Reading& reading, const DiagnosisOptions& options);

/// At most `most` rows with electrical readings: those with resistance, those with the array
/// disconnected, and of the rest those with the most readings, spread over the current. Omitted
/// rows are reported.
[[nodiscard]] std::vector<Reading> chosen_rows(const std::vector<Reading>& rows, std::size_t most,
                                               Sentences& remarks);

}  // namespace heatmatch
