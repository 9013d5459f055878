#pragma once

// Docstrings of register_margin.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* format_quantity =
    R"(Write a number with its unit, as all output of the package does.

Parameters
----------
value : float
    The number, in `unit`.
unit : str
    Symbol of the unit, such as "W" or "°C".
units : str
    Unit set of the result: "si" or "us".
digits : int
    Significant digits.

Returns
-------
str
    Number and unit.

Raises
------
InvalidInput
    `units` is neither "si" nor "us".

Examples
--------
>>> import heatmatch as hm
>>> hm.format_quantity(100.0, "°C", units="us")
'212 °F')";

}  // namespace heatmatch::python::docs
