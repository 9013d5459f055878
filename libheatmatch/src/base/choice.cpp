#include "heatmatch/base/choice.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

void refuse_word(std::string_view word, std::span<const std::string_view> words,
                 std::string_view part, std::string_view field) {
    std::string allowed;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) allowed += i + 1 == words.size() ? " or " : ", ";
        allowed += words[i];
    }
    throw InvalidInput(ErrorDetail{.part = std::string(part),
                                   .field = std::string(field),
                                   .value = quote(word),
                                   .allowed = std::move(allowed),
                                   .remedy = suggestion_of_likely(word, words)});
}

}  // namespace heatmatch
