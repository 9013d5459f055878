#include "heatmatch/solar/vector_width.hpp"

#include "diode_kernel.hpp"

namespace heatmatch {

std::string_view vector_width_name(VectorWidth width) {
    return word_of(width == VectorWidth::automatic ? widest_vectors() : width);
}

VectorWidth widest_vectors() {
    for (VectorWidth width : {VectorWidth::avx512, VectorWidth::avx2}) {
        if (kernel::runs(width)) return width;
    }
    return VectorWidth::portable;
}

}  // namespace heatmatch
