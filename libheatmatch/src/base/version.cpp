#include "heatmatch/base/version.hpp"

namespace heatmatch {

std::string_view library_version() {
    return HEATMATCH_VERSION;
}

}  // namespace heatmatch
