#include "diode_kernel.hpp"

namespace heatmatch::kernel {

bool runs(VectorWidth width) {
#if HEATMATCH_WIDE_KERNELS
    __builtin_cpu_init();
    const bool fma = __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("fma") != 0;
    if (width == VectorWidth::avx512) {
        return fma && __builtin_cpu_supports("avx512f") != 0 &&
               __builtin_cpu_supports("avx512dq") != 0;
    }
    return width == VectorWidth::portable || fma;
#else
    return width == VectorWidth::portable;
#endif
}

const Build& build_of(VectorWidth width) {
#if HEATMATCH_WIDE_KERNELS
    static const bool has_avx512 = runs(VectorWidth::avx512);
    static const bool has_avx2 = runs(VectorWidth::avx2);
    const bool any = width == VectorWidth::automatic;
    if (has_avx512 && (any || width == VectorWidth::avx512)) return avx512;
    if (has_avx2 && width != VectorWidth::portable) return avx2;
#else
    static_cast<void>(width);
#endif
    return portable;
}

}  // namespace heatmatch::kernel
