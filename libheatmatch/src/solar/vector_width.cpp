#include "heatmatch/solar/vector_width.hpp"

#include "diode_kernel.hpp"

namespace heatmatch {

std::string_view vector_width_name(VectorWidth width) {
    switch (width) {
        case VectorWidth::portable:
            return "portable";
        case VectorWidth::avx2:
            return "avx2";
        case VectorWidth::avx512:
            return "avx512";
        default:
            return vector_width_name(widest_vectors());
    }
}

VectorWidth widest_vectors() {
    for (VectorWidth width : {VectorWidth::avx512, VectorWidth::avx2}) {
        if (kernel::runs(width)) return width;
    }
    return VectorWidth::portable;
}

}  // namespace heatmatch
