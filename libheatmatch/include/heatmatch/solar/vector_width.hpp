#pragma once

#include <array>
#include <span>
#include <string_view>

#include "heatmatch/base/choice.hpp"

namespace heatmatch {

/// Which build of the inner loops is used; results differ in the last bits only.
enum class VectorWidth {
    automatic,  //!< the widest that this processor runs
    portable,
    avx2,
    avx512
};
inline constexpr auto vector_width_words =
    std::to_array<std::string_view>({"automatic", "portable", "avx2", "avx512"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(VectorWidth) {
    return vector_width_words;
}
/// The word of the build that is used for it.
[[nodiscard]] std::string_view vector_width_name(VectorWidth width);
/// The widest build that this processor runs.
[[nodiscard]] VectorWidth widest_vectors();

}  // namespace heatmatch
