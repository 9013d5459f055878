#pragma once

// Docstrings of functions in register_calibration.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* calibrate =
    R"(Fit conductivity of the fill and heat loss of the store to a log.

Parameters
----------
candidate : Candidate
    The circuit that heated the store.
log : StoreLog
    Power and temperatures over time.
progress : bool, callable or None
    True for a progress bar, or a function that is called with the completed share, 0 to 1.

Returns
-------
Calibration
    Conductivity at 20 °C [W/mK] and factor of the heat loss, each with its band.

Raises
------
InvalidInput
    The log has too few readings or no heat, or the store or a length of the element is not known.

Notes
-----
Least squares by Gauss and Newton on the field of temperature over radius and height. A reading has
the weight ``1 / (s^2 + |V|^2)``, with its noise ``s`` and the error of the model ``V``. Bands are
3.03 standard deviations, the joint 99 % region of two numbers, and at least 3 % of the conductivity
and 6 % of the loss. Without information in the log, a number stays within a factor of two of the
description (from memory). The store has one temperature at the first row. A probe that is not where
the log states it is outside these bands.)";

}  // namespace heatmatch::python::docs
