#pragma once

// Docstrings of register_tail.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* tail_wire_c =
    R"(Compute the temperature of the conductor at a distance from the terminal.

Parameters
----------
from_terminal_m : float or array_like
    Distance along the wire [m], 0 to 1000, any shape.

Returns
-------
float or numpy.ndarray
    Temperature of the conductor [°C].

Raises
------
InvalidInput
    A distance is out of range.

Notes
-----
A chain of exact fins from the heated length to an endless wire, with the loss that
``conductor_temperature`` has in the same surroundings. The rise is within 5 % of the same equations
solved in fine cells.

References
----------
churchill-chu-1975 : free convection around sheath and wire

Examples
--------
>>> import heatmatch as hm
>>> tail = hm.assess(hm.Catalog.starter(), hm.demo()).tail
>>> print(f"{tail.wire_c(0.1):.0f} °C")
122 °C)";

inline constexpr const char* tail_distance_for_limit_m =
    R"(Find how far from the terminal the wire stays at or below a limit.

Parameters
----------
limit_c : float
    Limit, such as the temperature rating of an insulation [°C], -60 to 2000.

Returns
-------
float or None
    Distance from the terminal [m]; None if the wire exceeds the limit everywhere.

Raises
------
InvalidInput
    `limit_c` is out of range.

Notes
-----
Solves ``T(x) = limit``, with ``T(x)`` of ``wire_c``.

References
----------
churchill-chu-1975 : free convection around sheath and wire

See Also
--------
HotTail.wire_c : Temperature at a distance.

Examples
--------
>>> import heatmatch as hm
>>> tail = hm.assess(hm.Catalog.starter(), hm.demo()).tail
>>> print(f"{tail.distance_for_limit_m(125):.2f} m")
0.04 m)";

}  // namespace heatmatch::python::docs
