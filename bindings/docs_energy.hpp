#pragma once

// Docstrings of functions in register_energy.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* widest_vectors =
    R"(Name the widest build of the inner loops that this processor runs.

Returns
-------
str
    "portable", "avx2" or "avx512".

Examples
--------
>>> import heatmatch as hm
>>> hm.widest_vectors() in ("portable", "avx2", "avx512")
True)";

}  // namespace heatmatch::python::docs
