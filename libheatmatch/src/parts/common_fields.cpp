#include "common_fields.hpp"

#include "heatmatch/base/error.hpp"

namespace heatmatch {

void refuse_part(std::string part, std::string field, std::string value, std::string allowed,
                 Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = std::move(part),
                                   .field = std::move(field),
                                   .value = std::move(value),
                                   .allowed = std::move(allowed),
                                   .remedy = std::move(remedy)});
}

void check_order(const std::string& part, const std::string& field, std::optional<double> low,
                 double typical, std::optional<double> high) {
    const bool low_fits = !low || *low <= typical;
    const bool high_fits = !high || typical <= *high;
    if (low_fits && high_fits) return;
    refuse_part(part, field, format_number(typical),
                "between its low value (" + (low ? format_number(*low) : "not given") +
                    ") and its high value (" + (high ? format_number(*high) : "not given") + ")",
                parts_sentences::say<"parts.correct_three">());
}

}  // namespace heatmatch
