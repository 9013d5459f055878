#pragma once

// Docstrings of functions in register_energy.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* widest_vectors =
    R"(Return the widest vector width that this processor supports.

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
