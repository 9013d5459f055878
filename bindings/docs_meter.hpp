#pragma once

// Docstrings of functions in register_meter.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* meter_sheet = R"(List the expected meter readings of a circuit.

Parameters
----------
candidate : Candidate
    The circuit, existing or chosen.
irradiance_w_m2 : array_like or None
    Irradiance on the panels [W/m2], above 0 up to 1600, any shape. None: 1000, 800, 600, 400, 200
    and 100.
air_c : float
    Air temperature around warmed-up panels [°C], -60 to 60.
uncovered_cell_c : float
    Cell temperature of panels uncovered a moment ago [°C], -60 to 110.
units : str
    "si" or "us"; checked only: every sentence has both.

Returns
-------
MeterSheet
    Bands of voltage [V], current [A] and power [W] by irradiance, and what to measure one by one.
    What cannot be computed is in ``missing``.

Raises
------
InvalidInput
    A number is out of range, or `units` is neither "si" nor "us".

Notes
-----
Single diode of the panels into the resistance of bank and wire; the band covers panel current and
resistance. Meter error is additional. Warmed-up cells are at ``Ta + G (NOCT - 20) / 800``.

References
----------
de-soto-2006 : I-V curves
ross-1980 : cell temperature

Examples
--------
>>> import heatmatch as hm
>>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
>>> sheet = hm.meter_sheet(candidate, irradiance_w_m2=[800])
>>> print(f"{sheet.rows[0].open_v.typical:.0f} V, disconnected")
71 V, disconnected)";

}  // namespace heatmatch::python::docs
