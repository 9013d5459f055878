# What nearly every source includes is compiled once for each target. CMAKE_DISABLE_PRECOMPILE_HEADERS
# leaves it out: then each file has to include what it uses, as the long run checks.
function(heatmatch_precompile target)
    target_precompile_headers(${target} PRIVATE
        <algorithm> <array> <cmath> <functional> <map> <memory> <optional> <span> <string>
        <string_view> <tuple> <utility> <variant> <vector>
        "${PROJECT_SOURCE_DIR}/libheatmatch/include/heatmatch/base/error.hpp"
        "${PROJECT_SOURCE_DIR}/libheatmatch/include/heatmatch/base/field_access.hpp"
        "${PROJECT_SOURCE_DIR}/libheatmatch/include/heatmatch/base/sentence.hpp"
        ${ARGN})
endfunction()
