#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// One name that would have been known, with what else people call it.
struct KnownName {
    std::string_view name{};
    std::string_view label{};
    std::string_view family{};
};

/// The known names that a wrong one may be a slip of: at most two letters put in, left out or
/// exchanged, and at most a quarter of the letters of the longer one. The nearest first.
[[nodiscard]] std::vector<std::string_view> near_names(std::string_view wrong,
                                                       std::span<const std::string_view> known);

/// Those that share the most words with a wrong one, in their name or as the first of their label;
/// none where no word is shared.
[[nodiscard]] std::vector<std::string_view> akin_names(std::string_view wrong,
                                                       std::span<const KnownName> known);

/// What to write instead of a name that nobody has: "did you mean" with all near names; else the
/// akin ones; else all of them where they are few; else their families. All `known` are of one
/// kind. Empty without any.
[[nodiscard]] Sentence suggestion(std::string_view wrong, std::span<const KnownName> known);
[[nodiscard]] Sentence suggestion(std::string_view wrong, std::span<const std::string_view> known);
/// The same where the error lists all of them already: nothing where none is near or akin.
[[nodiscard]] Sentence suggestion_of_likely(std::string_view wrong,
                                            std::span<const std::string_view> known);
/// The same among the names of a field table.
[[nodiscard]] Sentence suggestion(std::string_view wrong, std::span<const Field> fields);

}  // namespace heatmatch
