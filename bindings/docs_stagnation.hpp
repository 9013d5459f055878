#pragma once

// Docstrings of register_stagnation.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* simulate_stagnation =
    R"(Simulate how hot the store gets with no heat drawn.

Parameters
----------
candidate : Candidate
    The circuit; it needs a store, the lengths of its elements, and a site with latitude and tilt.
progress : bool, callable or None
    True for a progress bar, or a function that is called with the completed share, 0 to 1.

Returns
-------
Stagnation
    The days, and the highest temperature of every part with its limit [°C].

Raises
------
InvalidInput
    The site, the store, a size of it or a length of the element is not known, or the elements do
    not fit.

Notes
-----
Fourteen cloudless days at the time of the year with the most energy. Nothing opens the circuit and
no heat is drawn. The air around the store is that of high summer, and the fill is at the low end of
its conductivity. Cells are in air of 10 °C, which overstates power in summer.)";

inline constexpr const char* simulate_stagnations =
    R"(Simulate fourteen cloudless days for all circuits of one store.)";

}  // namespace heatmatch::python::docs
