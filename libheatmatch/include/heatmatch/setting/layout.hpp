#pragma once

#include <compare>
#include <string>
#include <string_view>
#include <vector>

namespace heatmatch {

/// How named things are connected, written as `barn pair x2 + porch four x4 | shed two`.
/// `+` joins in series, `|` joins strings in parallel, ` x2` repeats in series,
/// `[ ]` holds a part together. Names with signs of the notation are quoted.
struct Layout {
    struct Item;
    using Series = std::vector<Item>;

    std::vector<Series> strings{};  //!< in parallel; at least one, none of them empty

    /// Throws InvalidInput naming `part` and `field`, the place in the text and the notation.
    [[nodiscard]] static Layout parse(std::string_view text, std::string_view part,
                                      std::string_view field);
    /// The text that parse() reads as this layout again.
    [[nodiscard]] std::string text() const;
    /// How many named things it has, each repetition counted.
    [[nodiscard]] int count() const;
    /// The names, each once, in the order of the text.
    [[nodiscard]] std::vector<std::string> names() const;

    friend bool operator==(const Layout&, const Layout&) = default;
};

/// A name or, in brackets, a layout; `count` of them in series.
struct Layout::Item {
    std::string name{};               //!< empty for a layout in brackets
    std::vector<Layout> bracketed{};  //!< one, or none for a name
    int count = 1;

    friend bool operator==(const Item&, const Item&) = default;
};

/// The names of a layout of strings in parallel, string by string. Throws InvalidInput where it has
/// a bracket.
[[nodiscard]] std::vector<std::vector<std::string>> plain_strings(const Layout& layout,
                                                                  std::string_view part,
                                                                  std::string_view field);

/// Most things that a layout may have.
inline constexpr int most_in_layout = 1000;

}  // namespace heatmatch
