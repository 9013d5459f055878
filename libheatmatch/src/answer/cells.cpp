#include "answer/cells.hpp"

#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <variant>
#include <vector>

namespace heatmatch {

using answer_sentences::say;

namespace {

/// A text that is no line of a table yet has its places inside a name: cut there.
Sentence pieces_of(const std::string& text, const std::vector<Argument>& numbers) {
    Sentences pieces;
    detail::split_template(
        text, [&](std::string_view plain) { pieces.push_back(verbatim(std::string(plain))); },
        [&](std::string_view place, std::string_view) {
            for (const Argument& number : numbers) {
                if (number.name == place) {
                    pieces.push_back(sentence_of(std::get<Amount>(number.value)));
                }
            }
        });
    return say<"cell.pieces">(with<"pieces">(std::move(pieces)));
}

/// The sentence with those numbers at the places that it and its parts leave.
Sentence closed(const Sentence& open, const std::vector<Argument>& numbers) {
    if (open.empty()) return {};
    if (open.id() == "base.verbatim") return pieces_of(open.text(), numbers);
    Sentence result = open;
    for (Argument& argument : result.arguments) {
        if (auto* parts = std::get_if<Sentences>(&argument.value)) {
            for (Sentence& part : *parts) part = closed(part, numbers);
        }
    }
    for (const Argument& number : numbers) {
        const std::string_view place = place_of(*result.line, number.name);
        const bool given =
            std::any_of(open.arguments.begin(), open.arguments.end(),
                        [place](const Argument& argument) { return argument.name == place; });
        if (!place.empty() && !given) result.arguments.push_back({place, number.value});
    }
    return result;
}

/// Three digits, or as many as tell the value from its limit.
int digits_of(const Margin& margin) {
    int digits = 3;
    if (!margin.value || !margin.limit || *margin.value == *margin.limit) return digits;
    const auto shown = [&](double number) {
        return format_quantity(number, margin.unit, UnitSystem::si, digits);
    };
    while (digits < 7 && shown(*margin.value) == shown(*margin.limit)) ++digits;
    return digits;
}

}  // namespace

Sentence name_cell(std::string_view name) {
    return sentence_of(Name{std::string(name)});
}

Amount number(double value, int decimals, const Unit& unit) {
    return {.value = value, .unit = unit, .shown = Shown::number, .decimals = decimals};
}

Sentence number_cell(double value, int decimals, const Unit& unit) {
    return sentence_of(number(value, decimals, unit));
}

Amount fitted(double value, const Unit& unit) {
    return number(value, Amount::fit_decimals, unit);
}

Sentence unit_cell(const Unit& unit) {
    return sentence_of(Amount{.unit = unit, .shown = Shown::unit});
}

Sentence unknown_cell() {
    return say<"cell.unknown">();
}

Sentence degrees_cell(const std::optional<double>& celsius) {
    return celsius ? number_cell(*celsius, 0, unit::celsius) : unknown_cell();
}

Amount percent_number(double share) {
    return number(100.0 * share, 0, unit::percent);
}

Sentence panels_cell(const Circuit& circuit) {
    return say<"cell.panels">(with<"group">(circuit.owned.group),
                              with<"panels">(circuit.panels.label()));
}

Sentence elements_cell(const Circuit& circuit) {
    return say<"cell.elements">(with<"element">(circuit.bank.element.id),
                                with<"bank">(circuit.bank.hookup.label()));
}

Sentence said_by(const Margin& margin) {
    const int digits = digits_of(margin);
    std::vector<Argument> numbers;
    const auto put = [&](std::string_view place, const std::optional<double>& number) {
        if (number) numbers.push_back({place, Amount{*number, margin.unit, digits}});
    };
    put("value", margin.value);
    put("limit", margin.limit);
    put("low", margin.value_low);
    put("high", margin.value_high);
    return closed(margin.said, numbers);
}

Sentence headroom_cell(const Margin& margin) {
    if (!margin.headroom) return {};
    return number_cell(std::min(*margin.headroom, 1.0), 2);
}

Sentence headroom_left_cell(const Candidate& candidate) {
    if (candidate.heat_unknown()) return unknown_cell();
    return number_cell(std::min(candidate.smallest_headroom(), 1.0), 2);
}

Sentence price_cell(const Candidate& candidate) {
    if (!candidate.price_to_buy) return unknown_cell();
    return number_cell(*candidate.price_to_buy, 0, unit::money);
}

Sentence month_word(int month) {
    static const std::array<Sentence, 12> words{
        say<"month.jan">(), say<"month.feb">(), say<"month.mar">(), say<"month.apr">(),
        say<"month.may">(), say<"month.jun">(), say<"month.jul">(), say<"month.aug">(),
        say<"month.sep">(), say<"month.oct">(), say<"month.nov">(), say<"month.dec">()};
    return words.at(static_cast<std::size_t>(month - 1));
}

}  // namespace heatmatch
