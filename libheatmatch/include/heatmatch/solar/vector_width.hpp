#pragma once

#include <string_view>

namespace heatmatch {

/// Which build of the inner loops is used; results differ in the last bits only.
enum class VectorWidth {
    automatic,  //!< the widest that this processor runs
    portable,
    avx2,
    avx512
};
[[nodiscard]] std::string_view vector_width_name(VectorWidth width);
/// The widest build that this processor runs.
[[nodiscard]] VectorWidth widest_vectors();

}  // namespace heatmatch
