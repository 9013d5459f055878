#include "heatmatch/base/quantity.hpp"

#include "sentences.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <string>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/base/error.hpp"

namespace heatmatch {

using base_sentences::say;

namespace {

Sentence write_as(std::string_view example) {
    return say<"base.write_as">(with<"example">(example));
}

constexpr std::string_view unicode_minus = "\u2212";
// Special spaces of word processors between a number and its unit also count.
constexpr auto spaces = std::to_array<std::string_view>({" ", "\t", "\u00a0", "\u202f", "\u2009"});

std::string_view trim(std::string_view text) {
    for (bool again = true; again;) {
        again = false;
        for (const std::string_view space : spaces) {
            if (text.starts_with(space)) {
                text.remove_prefix(space.size());
                again = true;
            } else if (text.ends_with(space)) {
                text.remove_suffix(space.size());
                again = true;
            }
        }
    }
    return text;
}

[[noreturn]] void refuse(std::string_view text, std::string allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{
        .value = quote(text), .allowed = std::move(allowed), .remedy = std::move(remedy)});
}

/// Reads a plain decimal number from the front of rest; from_chars accepts no sign except '-', no
/// locale, no hexadecimal.
double take_number(std::string_view& rest, std::string_view whole, std::string_view example) {
    double sign = 1.0;
    if (rest.starts_with(unicode_minus)) {
        sign = -1.0;
        rest.remove_prefix(unicode_minus.size());
    } else if (rest.starts_with('+') || rest.starts_with('-')) {
        sign = rest.front() == '-' ? -1.0 : 1.0;
        rest.remove_prefix(1);
    }
    const bool digit_first =
        !rest.empty() && ((rest[0] >= '0' && rest[0] <= '9') ||
                          (rest.size() > 1 && rest[0] == '.' && rest[1] >= '0' && rest[1] <= '9'));
    if (!digit_first) {
        refuse(whole, "a number, with or without a unit",
               write_as(example.empty() ? "15 ohm" : example));
    }
    double number = 0.0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), number);
    if (error == std::errc::result_out_of_range || !std::isfinite(number)) {
        const bool tiny = rest.find("e-") < rest.size() || rest.find("E-") < rest.size();
        refuse(whole, "a finite number",
               tiny ? say<"base.write">(with<"text">("0")) : say<"base.write_smaller">());
    }
    rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
    return sign * number;
}

bool is_gauge(std::string_view unit_text) {
    return unit_text == "AWG" || unit_text == "awg" || unit_text == "ga";
}

Quantity gauge(double awg) {
    return {.value = round_significant(awg_area_mm2(awg), 12),
            .unit = unit::square_millimetre,
            .has_unit = true};
}

[[noreturn]] void refuse_gauge(std::string_view whole) {
    refuse(whole, "a gauge from 4/0 to 40 AWG", write_as("14 AWG"));
}

Quantity quantity_of(std::string_view text, std::string_view example) {
    const std::string_view whole = text;
    std::string_view rest = trim(text);
    if (rest.empty()) refuse(whole, "a number, with or without a unit", say<"base.leave_out">());
    double number = take_number(rest, whole, example);
    if (rest.starts_with(',')) {
        refuse(whole, "an unambiguous number", say<"base.decimal_point">());
    }
    if (rest.starts_with('/') && rest.size() > 1 && rest[1] >= '0' && rest[1] <= '9') {
        rest.remove_prefix(1);
        const bool is_stroke = rest == "0" || rest.starts_with("0 ") || rest.starts_with("0A") ||
                               rest.starts_with("0a");
        if (is_stroke && is_gauge(trim(rest.substr(1)))) {
            if (number != 1.0 && number != 2.0 && number != 3.0 && number != 4.0)
                refuse_gauge(whole);
            return gauge(1.0 - number);
        }
        const double denominator = take_number(rest, whole, example);
        if (denominator == 0.0) refuse(whole, "a number", say<"base.divided_by_zero">());
        number /= denominator;
        if (!std::isfinite(number)) refuse(whole, "a finite number", say<"base.write_smaller">());
    }
    rest = trim(rest);
    if (rest.empty()) return {.value = number};
    if (is_gauge(rest)) {
        if (number < 0.0 || number > 40.0 || number != std::floor(number)) refuse_gauge(whole);
        return gauge(number);
    }
    const Unit* found = find_unit(rest);
    if (found == nullptr) {
        refuse(whole, "a number with a known unit",
               say<"base.unknown_unit">(
                   with<"unit">(quote(rest)),
                   with<"examples">(example.empty() ? R"("15 ohm", "11 in", "392 °F")"
                                                    : '"' + std::string(example) + '"')));
    }
    return {.value = number, .unit = *found, .has_unit = true};
}

}  // namespace

Quantity parse_quantity(std::string_view text) {
    return quantity_of(text, {});
}

double parse_quantity(std::string_view text, const Unit& kept, std::string_view example) {
    const std::string own = example.empty() ? exact_text(15.0, kept) : std::string(example);
    const Quantity read = quantity_of(text, own);
    if (!read.has_unit) return read.value;
    const bool kelvin_to_celsius = read.unit.dimension == Dimension::temperature_difference &&
                                   kept.dimension == Dimension::temperature;
    if (kelvin_to_celsius) return round_significant(read.value - zero_celsius_k, 12);
    const bool degrees_of_difference = read.unit.dimension == Dimension::temperature &&
                                       kept.dimension == Dimension::temperature_difference;
    if (degrees_of_difference) return round_significant(read.value * read.unit.factor, 12);
    if (read.unit.dimension != kept.dimension) {
        refuse(text, std::string(describe(kept.dimension)),
               say<"base.other_dimension">(
                   with<"unit">(read.unit.symbol), with<"dimension">(describe(read.unit.dimension)),
                   with<"instead">(kept.symbol.empty()
                                       ? say<"base.bare_number">()
                                       : say<"base.write_in">(with<"unit">(kept.symbol)))));
    }
    const double converted = convert(read.value, read.unit, kept);
    if (!std::isfinite(converted)) refuse(text, "a finite number", say<"base.write_smaller">());
    return converted;
}

}  // namespace heatmatch
