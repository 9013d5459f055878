#include "heatmatch/base/sentence.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/plain_text.hpp"

namespace heatmatch {

using base_sentences::say;

namespace {

/// Hours as clock time, modulo 24 h.
std::string clock_of(double hours) {
    if (!std::isfinite(hours)) return format_number(hours);
    const double day = 24.0 * 60.0;
    const double minutes = std::round(60.0 * hours);
    const int of_day = static_cast<int>(minutes - day * std::floor(minutes / day));
    const int past = of_day % 60;
    return std::to_string(of_day / 60) + (past < 10 ? ":0" : ":") + std::to_string(past);
}

std::string number_of(const Amount& amount, const Unit& shown) {
    const double value = convert(amount.value, amount.unit, shown);
    if (amount.decimals == Amount::any_decimals) return format_number(value, amount.digits);
    const double size = std::fabs(value);
    const int fitting = size < 9.995 ? 2 : size < 99.95 ? 1 : 0;
    return format_fixed(value, amount.decimals == Amount::fit_decimals ? fitting : amount.decimals);
}

using Arguments = std::span<const Argument>;

std::string joined(const Sentences& sentences, UnitSystem system, std::string_view between,
                   Arguments more) {
    std::string result;
    for (const Sentence& sentence : sentences) {
        const std::string text = sentence.text(system, more);
        if (text.empty()) continue;
        if (!result.empty()) result += between;
        result += text;
    }
    return result;
}

std::string text_of_value(const Argument& argument, UnitSystem system, std::string_view between,
                          Arguments more) {
    if (const auto* amount = std::get_if<Amount>(&argument.value)) return text_of(*amount, system);
    if (const auto* name = std::get_if<Name>(&argument.value)) return plain_line(name->text);
    return joined(std::get<Sentences>(argument.value), system, between, more);
}

}  // namespace

Sentence::Sentence(const Template* line_, std::vector<Argument> arguments_)
    : line(line_), arguments(std::move(arguments_)) {}

bool operator==(const Argument& a, const Argument& b) {
    return a.name == b.name && a.value == b.value;
}

bool operator==(const Sentence& a, const Sentence& b) {
    return a.id() == b.id() && a.arguments == b.arguments;
}

std::string Sentence::text(UnitSystem system) const {
    return text(system, {});
}

std::string Sentence::text(UnitSystem system, std::span<const Argument> more) const {
    std::string result;
    if (empty()) return result;
    const auto named = [](std::span<const Argument> among, std::string_view name) {
        return std::find_if(among.begin(), among.end(),
                            [name](const Argument& argument) { return argument.name == name; });
    };
    detail::split_template(
        line->text, [&](std::string_view plain) { result += plain; },
        [&](std::string_view name, std::string_view between) {
            const std::span<const Argument> own(arguments);
            if (const auto found = named(own, name); found != own.end()) {
                result += text_of_value(*found, system, between, more);
            } else if (const auto other = named(more, name); other != more.end()) {
                result += text_of_value(*other, system, between, more);
            }
        });
    return result;
}

std::string text_of(const Sentences& sentences, UnitSystem system, std::string_view between) {
    return joined(sentences, system, between, {});
}

Sentence sentence_of(const Amount& amount) {
    return say<"base.amount">(with<"amount">(amount));
}

Sentence sentence_of(Name name) {
    return say<"base.name">(with<"name">(std::move(name)));
}

Sentence sentence_of(Sentences sentences) {
    return say<"base.all">(with<"sentences">(std::move(sentences)));
}

Sentence verbatim(std::string text) {
    if (text.empty()) return {};
    return say<"base.verbatim">(with<"text">(Name{std::move(text)}));
}

Sentence filled(Sentence sentence, std::span<const Argument> more) {
    if (sentence.empty()) return sentence;
    const auto named = [](std::span<const Argument> among, std::string_view name) {
        return std::find_if(among.begin(), among.end(),
                            [name](const Argument& argument) { return argument.name == name; });
    };
    for (Argument& argument : sentence.arguments) {
        auto* parts = std::get_if<Sentences>(&argument.value);
        if (parts == nullptr) continue;
        for (Sentence& part : *parts) part = filled(std::move(part), more);
    }
    detail::split_template(
        sentence.line->text, [](std::string_view) {},
        [&](std::string_view name, std::string_view) {
            const std::span<const Argument> own(sentence.arguments);
            const auto found = named(more, name);
            if (found == more.end() || named(own, name) != own.end()) return;
            sentence.arguments.push_back({name, found->value});
        });
    return sentence;
}

std::string_view place_of(const Template& line, std::string_view name) {
    std::string_view found;
    detail::split_template(
        line.text, [](std::string_view) {},
        [&](std::string_view place, std::string_view) {
            if (place == name) found = place;
        });
    return found;
}

std::string text_of(const Amount& amount, UnitSystem system) {
    if (amount.shown == Shown::clock) return clock_of(amount.value);
    if (amount.shown == Shown::other) {
        Amount whole = amount;
        whole.shown = Shown::whole;
        return text_of(whole, system == UnitSystem::si ? UnitSystem::us : UnitSystem::si);
    }
    const Unit shown = display_unit(amount.unit, system);
    if (amount.shown == Shown::unit) return std::string(shown.symbol);
    if (amount.shown == Shown::whole) {
        if (amount.decimals == Amount::any_decimals) {
            return format_quantity(amount.value, amount.unit, system, amount.digits);
        }
        const std::string gap = shown.symbol.empty() || shown.symbol == "%" ? "" : " ";
        return number_of(amount, shown) + gap + std::string(shown.symbol);
    }
    const std::string number = number_of(amount, shown);
    const bool plus = amount.shown == Shown::change && number.front() != '-';
    return plus ? '+' + number : number;
}

}  // namespace heatmatch
