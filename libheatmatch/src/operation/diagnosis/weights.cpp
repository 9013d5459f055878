#include "weights.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

namespace heatmatch {

using diagnosis_sentences::say;

namespace {

// Rows read at the wrong leads, in wrong units or too early; from memory.
constexpr double misread_share = 0.05;

}  // namespace

double carried_weight(double behind, std::size_t rows) {
    const double most = -2.0 * std::log(misread_share) * static_cast<double>(rows);
    return std::exp(-0.5 * std::min(behind, most));
}

Sentence one_reading_said() {
    return say<"diagnosis.one_reading">(with<"often">(100.0 * misread_share, unit::percent));
}

void share_weights(Diagnosis& diagnosis) {
    double of_group = 0.0;
    for (std::size_t i = 0; i < diagnosis.group; ++i) of_group += diagnosis.ranked[i].weight;
    for (std::size_t i = 0; i < diagnosis.group; ++i) {
        diagnosis.ranked[i].weight = of_group / static_cast<double>(diagnosis.group);
    }
    double sum = 0.0;
    for (const Hypothesis& each : diagnosis.ranked) sum += each.weight;
    for (Hypothesis& each : diagnosis.ranked) each.weight /= sum;
}

}  // namespace heatmatch
