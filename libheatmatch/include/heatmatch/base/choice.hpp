#pragma once

#include <concepts>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>

namespace heatmatch {

/// A closed choice: an enum with the array of its words beside it, in the order of its enumerators;
/// `words_of(kind)` returns that array. Files, messages and Python use the words; the library
/// compares enumerators.
template <class Kind>
concept Choice = std::is_enum_v<Kind> && requires(Kind kind) {
    { words_of(kind) } -> std::convertible_to<std::span<const std::string_view>>;
};

/// Its word; empty for a number that no enumerator has.
template <Choice Kind>
[[nodiscard]] constexpr std::string_view word_of(Kind kind) {
    const std::span<const std::string_view> words = words_of(kind);
    const auto index = static_cast<std::size_t>(kind);
    return index < words.size() ? words[index] : std::string_view{};
}
/// Its word; empty where nothing is chosen.
template <Choice Kind>
[[nodiscard]] constexpr std::string_view word_of(const std::optional<Kind>& kind) {
    return kind ? word_of(*kind) : std::string_view{};
}

/// The same as a std::string, for concatenation.
[[nodiscard]] inline std::string text_of_choice(const auto& kind) {
    return std::string(word_of(kind));
}

/// The choice of that word; nothing if none has it.
template <Choice Kind>
[[nodiscard]] constexpr std::optional<Kind> find_choice(std::string_view word) {
    const std::span<const std::string_view> words = words_of(Kind{});
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == word) return static_cast<Kind>(i);
    }
    return std::nullopt;
}

/// Rejects a word that is not among these and names the nearest. Throws InvalidInput.
[[noreturn]] void refuse_word(std::string_view word, std::span<const std::string_view> words,
                              std::string_view part = {}, std::string_view field = {});

/// The choice of that word. Throws InvalidInput naming the nearest known one.
template <Choice Kind>
[[nodiscard]] Kind read_choice(std::string_view word, std::string_view part,
                               std::string_view field) {
    const auto found = find_choice<Kind>(word);
    if (!found) refuse_word(word, words_of(Kind{}), part, field);
    return *found;
}

}  // namespace heatmatch
