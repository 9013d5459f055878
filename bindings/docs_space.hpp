#pragma once

// Docstrings of register_space.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* space_lift_k =
    R"(Compute the temperature rise of the space above the outside air at steady heat.

Parameters
----------
heat_w : float or array_like
    Heat into the space [W], 0 to 10000000, any shape.

Returns
-------
float or numpy.ndarray
    Difference to the air outside [K]; 0 if no loss is known.

Raises
------
InvalidInput
    A number is out of range.

Notes
-----
``Q / (sum(U A) + 0.34 n V)``, with ``n`` air changes per hour of a volume ``V`` [m3]. Valid on a
dark night: sun through the covers, heat from the ground and other sources are left out.

References
----------
incropera : heat capacity of air

Examples
--------
>>> import heatmatch as hm
>>> space = hm.assess(hm.Catalog.starter(), hm.demo()).space
>>> print(f"{space.lift_k(1000.0):.1f} K")
10.2 K)";

}  // namespace heatmatch::python::docs
