#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::parts_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"parts.assumption", "{part}: {field} = {value} ({source})"},
});

template <Word Id, Word... Called>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::parts_sentences
