#include "heatmatch/match/margins/margin.hpp"

#include "said.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace heatmatch {

namespace {

/// Arguments for the open places of a margin's sentence.
std::vector<Argument> numbers_of(const Margin& margin, UnitSystem system) {
    // Three digits, or as many as separate the value from its limit.
    int digits = 3;
    const std::optional<double>& value = margin.value;
    const std::optional<double>& limit = margin.limit;
    const auto shown = [&](double number) {
        return format_quantity(number, margin.unit, system, digits);
    };
    const bool differ = value && limit && *value != *limit;
    while (differ && digits < 7 && shown(*value) == shown(*limit)) ++digits;
    std::vector<Argument> numbers;
    const auto put = [&](std::string_view place, const std::optional<double>& number) {
        if (number) numbers.push_back({place, Amount{*number, margin.unit, digits}});
    };
    put("value", value);
    put("limit", limit);
    put("low", margin.value_low);
    put("high", margin.value_high);
    return numbers;
}

/// Severity and headroom of a value that approaches an upper limit; both signs are inverted for a
/// lower limit.
void grade_signed(Margin& margin, double rest, double sign) {
    if (!margin.value || !margin.limit) {
        margin.severity = Severity::not_assessed;
        return;
    }
    margin.headroom = headroom_of(sign * *margin.value, sign * *margin.limit, sign * rest);
    if (*margin.headroom < 0.0) {
        margin.severity = margin.consequence;
    } else if (*margin.headroom < near_limit && margin.consequence != Severity::none) {
        margin.severity = Severity::caution;
    } else {
        margin.severity = Severity::none;
    }
}

}  // namespace

std::string_view severity_name(Severity severity) {
    return word_of(severity);
}

std::string Margin::sentence(UnitSystem system) const {
    return said.text(system, numbers_of(*this, system));
}

Sentence Margin::whole() const {
    return filled(said, numbers_of(*this, UnitSystem::si));
}

double headroom_of(double value, double limit, double rest) {
    if (!std::isfinite(value) || !std::isfinite(limit)) return -1.0;
    if (limit > rest) {
        const double headroom = (limit - value) / (limit - rest);
        // A limit just above rest: a ratio that overflows is the largest number.
        constexpr double most = std::numeric_limits<double>::max();
        return std::clamp(headroom, -most, most);
    }
    if (value >= limit) return -1.0;
    return std::min(1.0, (limit - value) / std::max(std::fabs(limit), 1.0));
}

void grade(Margin& margin, double rest) {
    grade_signed(margin, rest, 1.0);
}

void grade_from_below(Margin& margin, double rest) {
    grade_signed(margin, rest, -1.0);
}

int badness(Severity severity, Severity consequence) {
    return static_cast<int>(severity == Severity::not_assessed ? consequence : severity);
}

namespace {

void take_smaller_headroom(std::optional<double>& smallest, double headroom) {
    smallest = std::min(smallest.value_or(headroom), headroom);
}

/// Careful headroom set by a margin itself, where a fact has two ends, each careful for one margin.
void take_own_careful(Margin& margin, double headroom, int& worst) {
    take_smaller_headroom(margin.careful_headroom, headroom);
    if (headroom >= near_limit || margin.consequence == Severity::none) return;
    const Severity found = headroom < 0.0 ? margin.consequence : Severity::caution;
    worst = std::max(worst, static_cast<int>(found));
    if (headroom >= 0.0) return;
    const bool kinder =
        margin.severity != Severity::not_assessed && margin.severity < Severity::warning;
    if (margin.consequence == Severity::danger && kinder) margin.severity = Severity::warning;
}

}  // namespace

void compare_with_careful(std::vector<Margin>& likely, std::vector<Margin> careful) {
    std::size_t next = 0;
    const auto taken = [&careful, &next](const Margin& margin) -> Margin* {
        const auto same = [&margin](const Margin& other) {
            return other.name == margin.name && other.subject == margin.subject;
        };
        const auto from = careful.begin() + static_cast<std::ptrdiff_t>(next);
        const auto found = std::find_if(from, careful.end(), same);
        if (found == careful.end()) return nullptr;
        std::rotate(from, found, found + 1);
        return &careful[next++];
    };
    for (Margin& margin : likely) {
        int worst = badness(margin.severity, margin.consequence);
        const std::optional<double> own = margin.careful_headroom;
        margin.careful_headroom = margin.headroom;
        if (own) take_own_careful(margin, *own, worst);
        if (const Margin* other = taken(margin)) {
            const int careful_worst = badness(other->severity, other->consequence);
            if (other->headroom) take_smaller_headroom(margin.careful_headroom, *other->headroom);
            const bool kinder =
                margin.severity != Severity::not_assessed && margin.severity < Severity::warning;
            if (careful_worst == static_cast<int>(Severity::danger) && kinder) {
                margin.severity = Severity::warning;
                add(margin,
                    margins_sentences::say<"margin.unstated">(with<"then">(other->whole())));
            }
            worst = std::max(worst, careful_worst);
        }
        margin.worst_severity = static_cast<Severity>(worst);
    }
    for (std::size_t i = next; i < careful.size(); ++i) {
        Margin& more = likely.emplace_back(std::move(careful[i]));
        more.worst_severity = static_cast<Severity>(badness(more.severity, more.consequence));
        more.careful_headroom = std::exchange(more.headroom, std::nullopt);
        if (more.severity == Severity::danger) more.severity = Severity::warning;
    }
}

Margin not_assessed(std::string name, std::string subject, Sentence why,
                    std::vector<std::string> missing) {
    return {.name = std::move(name),
            .subject = std::move(subject),
            .said = std::move(why),
            .missing = std::move(missing)};
}

}  // namespace heatmatch
