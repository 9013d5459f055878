#include "bed_checks.hpp"

#include "sentences.hpp"

#include <cmath>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

void BedChecks::refuse(const std::string& field, const std::string& value,
                       const std::string& allowed, Sentence remedy) const {
    throw InvalidInput({.part = part,
                        .field = field,
                        .value = value,
                        .allowed = allowed,
                        .remedy = std::move(remedy)});
}

void BedChecks::temperature(const char* field, double at_c) const {
    if (at_c >= coldest_c && at_c <= hottest_c) return;
    refuse(field, format_number(at_c) + " °C", "-100 to 1500 °C", say<"heat.give_celsius">());
}

void BedChecks::size(const char* field, double value) const {
    if (std::isfinite(value) && value > 0.0) return;
    refuse(field, format_number(value), "> 0", say<"heat.measure">());
}

}  // namespace heatmatch
