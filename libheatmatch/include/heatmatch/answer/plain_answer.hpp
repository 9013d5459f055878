#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/quantity.hpp"

namespace heatmatch {

/// An answer in a person's own words, taken apart: `4 x 37.5 V 8.7 A, 12 years # its label`.
struct PlainAnswer {
    std::string text{};  //!< without the note
    std::string note{};  //!< behind #
    std::vector<Quantity> amounts{};
    std::vector<std::string> words{};  //!< in lowercase letters, without signs at their ends
    bool times = false;                //!< x or a similar sign follows the first amount
    std::string unclear{};             //!< first number that can be read in two ways: `1,000`

    /// Empty, a question mark, or one of a few words for it.
    [[nodiscard]] bool unknown() const;
    [[nodiscard]] bool has_word(std::string_view word) const;
    /// Amounts of one dimension; `bare` are those without a unit.
    [[nodiscard]] std::vector<double> of(const Unit& unit) const;
    [[nodiscard]] std::vector<double> bare() const;
    /// The number of pieces: the first amount, if it has no unit and an x or a word follows it.
    [[nodiscard]] std::optional<double> pieces() const;
};
[[nodiscard]] PlainAnswer read_plain_answer(std::string_view text);

}  // namespace heatmatch
