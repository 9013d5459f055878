#pragma once

#include <cstddef>

#include "heatmatch/solar/vector_width.hpp"

namespace heatmatch::kernel {

/// Curves side by side, as bare pointers: the kernels are compiled for processors that the rest of
/// the library does not require, so they share no inline function with it.
struct Curves {
    const double* light_current_a = nullptr;
    const double* ln_saturation_current = nullptr;
    const double* series_resistance_ohm = nullptr;
    const double* shunt_conductance_s = nullptr;
    const double* ideality_v = nullptr;
    std::size_t count = 0;
};

/// Loads of one curve each, and the results.
struct Points {
    const double* resistance_ohm = nullptr;
    double* voltage_v = nullptr;
    double* current_a = nullptr;
};

/// The same loads for every curve: sums of hours x P [Wh] and of hours x dP/d(ln R) [Wh].
struct Sums {
    const double* hours = nullptr;  //!< one for each curve
    const double* resistance_ohm = nullptr;
    std::size_t count = 0;  //!< of resistances
    double* energy_wh = nullptr;
    double* slope_wh = nullptr;
};

/// One build of the two loops.
struct Build {
    void (*operating_points)(const Curves&, const Points&) = nullptr;
    void (*energy_sums)(const Curves&, const Sums&) = nullptr;
    /// Largest power of each curve [W]; `move` is the relative size of the last step.
    void (*maximum_powers)(const Curves&, double* power_w, double* move) = nullptr;
};

extern const Build portable;
extern const Build avx2;
extern const Build avx512;

/// Whether it was built and this processor can execute it.
[[nodiscard]] bool runs(VectorWidth width);

/// The build for that width; the widest one that this processor executes for `automatic`. Falls
/// back to the next narrower one.
[[nodiscard]] const Build& build_of(VectorWidth width);

}  // namespace heatmatch::kernel
