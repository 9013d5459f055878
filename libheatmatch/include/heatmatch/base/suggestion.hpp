#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// One known name, with its synonyms.
struct KnownName {
    std::string_view name{};
    std::string_view label{};
    std::string_view family{};
};

/// Known names for which a wrong name may be a typing error: at most two letters inserted, omitted
/// or replaced, and at most a quarter of the letters of the longer name. The nearest first.
[[nodiscard]] std::vector<std::string_view> near_names(std::string_view wrong,
                                                       std::span<const std::string_view> known);

/// Known names that share the most words with a wrong one, in their name or as the first word of
/// their label; empty where no word is shared.
[[nodiscard]] std::vector<std::string_view> akin_names(std::string_view wrong,
                                                       std::span<const KnownName> known);

/// Suggestion for an unknown name: "did you mean" with all near names; otherwise the names that
/// share words; otherwise all names if they are few; otherwise their families. All `known` are of
/// one kind. Empty without any.
[[nodiscard]] Sentence suggestion(std::string_view wrong, std::span<const KnownName> known);
[[nodiscard]] Sentence suggestion(std::string_view wrong, std::span<const std::string_view> known);
/// The same where the error already lists all names: a request to choose one of them where none is
/// near or shares a word.
[[nodiscard]] Sentence suggestion_of_likely(std::string_view wrong,
                                            std::span<const std::string_view> known);
/// The same among the names of a field table.
[[nodiscard]] Sentence suggestion(std::string_view wrong, std::span<const Field> fields);

}  // namespace heatmatch
