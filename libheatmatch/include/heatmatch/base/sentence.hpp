#pragma once

#include <algorithm>
#include <array>
#include <concepts>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

/// One line of a room's table of sentences. `{name}` is the place of an argument. In `{name: + }`
/// the text after the colon separates the items of a list; the default is a comma and a space.
struct Template {
    std::string_view id{};    //!< `array.cold_voltage`; no other template has it
    std::string_view text{};  //!< no digit outside an argument: numbers are data
};

/// Which part of an amount is shown: all of it; its number alone (in a range, or where the column
/// heading has the unit); the number with its sign; its unit alone; the time of day; or all of it
/// in the other unit set, for a text with both.
enum class Shown { whole, number, change, unit, clock, other };

/// A number in a sentence, shown in the unit set of the reader.
struct Amount {
    double value = 0.0;
    Unit unit{};
    int digits = 3;  //!< significant digits, at most
    Shown shown = Shown::whole;
    int decimals = any_decimals;  //!< fixed number of decimals, regardless of `digits`

    static constexpr int any_decimals = -1;
    /// Three digits with trailing zeros, at most two decimals: 0.04, 2.10, 31.0, 250. For columns
    /// of numbers of different magnitudes.
    static constexpr int fit_decimals = -2;

    friend bool operator==(const Amount&, const Amount&) = default;
};

/// A name in a sentence: of a part, a field, a run or a source. It is printed unchanged in either
/// unit set.
struct Name {
    std::string text{};

    friend bool operator==(const Name&, const Name&) = default;
};

struct Argument;

/// A sentence as data: a line of a table and its arguments. The text is composed when it is read,
/// in either unit set. Two sentences are equal if their ids and arguments are.
struct Sentence {
    const Template* line = nullptr;  //!< null: an empty sentence
    std::vector<Argument> arguments;

    Sentence() = default;
    Sentence(const Template* line_, std::vector<Argument> arguments_);

    [[nodiscard]] bool empty() const { return line == nullptr; }
    [[nodiscard]] std::string_view id() const { return empty() ? std::string_view{} : line->id; }
    [[nodiscard]] std::string text(UnitSystem system = UnitSystem::si) const;
    /// Also with arguments that the sentence and its parts leave open.
    [[nodiscard]] std::string text(UnitSystem system, std::span<const Argument> more) const;
};
using Sentences = std::vector<Sentence>;

/// Value for one `{name}` of a template.
struct Argument {
    std::string_view name{};
    std::variant<Amount, Name, Sentences> value{};
};
[[nodiscard]] bool operator==(const Argument& a, const Argument& b);
[[nodiscard]] bool operator==(const Sentence& a, const Sentence& b);

/// Their texts separated by `between`; empty ones are omitted.
[[nodiscard]] std::string text_of(const Sentences& sentences, UnitSystem system = UnitSystem::si,
                                  std::string_view between = " ");

/// An amount, a name (a cite key, a field, a word of data) or several sentences as one sentence.
[[nodiscard]] Sentence sentence_of(const Amount& amount);
[[nodiscard]] Sentence sentence_of(Name name);
[[nodiscard]] Sentence sentence_of(Sentences sentences);

/// A text that is the same in either unit set: text without data, from a file or from the Python
/// package. An empty text yields an empty sentence.
[[nodiscard]] Sentence verbatim(std::string text);

/// The sentence with these arguments for places that it and its parts leave open.
[[nodiscard]] Sentence filled(Sentence sentence, std::span<const Argument> more);

/// The place of that name in a line, as written there; empty where there is none.
[[nodiscard]] std::string_view place_of(const Template& line, std::string_view name);

/// An amount as its own text: `392 °F`.
[[nodiscard]] std::string text_of(const Amount& amount, UnitSystem system = UnitSystem::si);

/// A text known at compile time, to name templates and arguments.
template <std::size_t N>
struct Word {
    // NOLINTNEXTLINE(google-explicit-constructor): a literal is one
    consteval Word(const char (&literal)[N]) {
        for (std::size_t i = 0; i < N; ++i) letters[i] = literal[i];
    }
    [[nodiscard]] constexpr std::string_view view() const { return {letters.data(), N - 1}; }

    std::array<char, N> letters{};
};

/// An argument whose name is known at compile time.
template <Word Called>
struct NamedArgument {
    Argument argument{};
};

/// `{Called}` is a number, with three digits by default.
template <Word Called>
[[nodiscard]] NamedArgument<Called> with(double value, const Unit& unit = unit::none,
                                         int digits = 3) {
    return {{Called.view(), Amount{value, unit, digits}}};
}
template <Word Called>
[[nodiscard]] NamedArgument<Called> with(const Amount& amount) {
    return {{Called.view(), amount}};
}
template <Word Called>
[[nodiscard]] NamedArgument<Called> with(Name name) {
    return {{Called.view(), std::move(name)}};
}
template <Word Called, class Text>
requires std::convertible_to<const Text&, std::string_view>
[[nodiscard]] NamedArgument<Called> with(const Text& name) {
    return {{Called.view(), Name{std::string(std::string_view(name))}}};
}
template <Word Called>
[[nodiscard]] NamedArgument<Called> with(Sentences sentences) {
    return {{Called.view(), std::move(sentences)}};
}
/// A part of a sentence; an empty one leaves its place empty.
template <Word Called>
[[nodiscard]] NamedArgument<Called> with(Sentence sentence) {
    Sentences one;
    if (!sentence.empty()) one.push_back(std::move(sentence));
    return {{Called.view(), std::move(one)}};
}

namespace detail {

/// Calls `place(name, between)` for each `{name}` or `{name:between}` and `plain(text)` for the
/// text between them.
template <class Plain, class Place>
constexpr void split_template(std::string_view text, const Plain& plain, const Place& place) {
    while (!text.empty()) {
        const std::size_t open = text.find('{');
        plain(text.substr(0, open));
        if (open == std::string_view::npos) return;
        const std::size_t close = text.find('}', open);
        const std::string_view inside = text.substr(open + 1, close - open - 1);
        const std::size_t colon = inside.find(':');
        const bool joined = colon != std::string_view::npos;
        place(inside.substr(0, colon), joined ? inside.substr(colon + 1) : ", ");
        if (close == std::string_view::npos) return;
        text.remove_prefix(close + 1);
    }
}

[[nodiscard]] constexpr bool among(std::string_view name, std::span<const std::string_view> names) {
    for (const std::string_view known : names) {
        if (known == name) return true;
    }
    return false;
}

[[nodiscard]] constexpr bool is_listed(std::span<const Template> table, std::string_view id) {
    return std::any_of(table.begin(), table.end(),
                       [id](const Template& line) { return line.id == id; });
}

/// The line of a table with that id; a missing id is a compile error.
[[nodiscard]] constexpr const Template* line_of(std::span<const Template> table,
                                                std::string_view id) {
    for (const Template& line : table) {
        if (line.id == id) return &line;
    }
    throw "this room's table has no sentence of that id";
}

/// Whether a line has a place for every argument and an argument for every place. `left` names
/// places that are filled later, by filled() or text().
[[nodiscard]] constexpr bool fits(const Template& line, std::span<const std::string_view> given,
                                  std::span<const std::string_view> left) {
    bool all_given = true;
    std::size_t places = 0;
    split_template(
        line.text, [](std::string_view) {},
        [&](std::string_view name, std::string_view) {
            all_given = all_given && (among(name, given) || among(name, left));
        });
    for (const std::string_view name : given) {
        bool used = false;
        split_template(
            line.text, [](std::string_view) {},
            [&](std::string_view place, std::string_view) { used = used || place == name; });
        if (used) ++places;
    }
    return all_given && places == given.size();
}

}  // namespace detail

/// Whether a table has a line of that id: the constraint on each room's `say`, so that several
/// rooms' overloads can coexist in one source.
template <const auto& Table, Word Id>
concept Listed = detail::is_listed(Table, Id.view());

/// A sentence of a table: `make_sentence<table, "id">(with<"volts">(12.0, unit::volt))`. It does
/// not compile where the table lacks the id, the line lacks a given argument, or an argument of the
/// line is missing. `Left` names arguments that are filled later.
template <const auto& Table, Word Id, Word... Left, Word... Called>
[[nodiscard]] Sentence make_sentence(NamedArgument<Called>... given) {
    static constexpr const Template* line = detail::line_of(Table, Id.view());
    static constexpr std::array<std::string_view, sizeof...(Called)> names{Called.view()...};
    static constexpr std::array<std::string_view, sizeof...(Left)> left{Left.view()...};
    static_assert(detail::fits(*line, names, left),
                  "the arguments given are not those of this sentence in its room's table");
    std::vector<Argument> arguments;
    arguments.reserve(sizeof...(Called));
    (arguments.push_back(std::move(given.argument)), ...);
    return {line, std::move(arguments)};
}

}  // namespace heatmatch
