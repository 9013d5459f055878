#pragma once

// Docstrings of register_array.cpp; those of both kinds of I-V curve are in docs_curves.hpp.
namespace heatmatch::python::docs {

inline constexpr const char* array_uniform = R"(Make an array of equal panels.

Parameters
----------
panel : SingleDiode or Panel
    One of the panels; a Panel is fitted to its label first.
series : int
    Panels in series in each string, 1 or more.
parallel : int
    Strings in parallel, 1 or more.

Returns
-------
Array
    The array.

Raises
------
InvalidInput
    A count is below 1, or no single diode fits the label of `panel`.

References
----------
de-soto-2006 : single-diode model of one panel

See Also
--------
fit_single_diode : How a label is fitted.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> array = hm.Array.uniform(panel, series=2)
>>> curve = array.at(irradiance_w_m2=600, cell_temperature_c=35)
>>> print(f"{curve.into_resistance(12.0).power_w:.0f} W")
284 W)";

inline constexpr const char* array_at =
    R"(Compute the I-V curve at an irradiance and a cell temperature.

Parameters
----------
irradiance_w_m2 : float
    Irradiance on the cells [W/m2], 0 to 3000.
cell_temperature_c : float
    Cell temperature [°C], -90 to 150.

Returns
-------
ArrayCurve
    The I-V curve of the array; without light it has no current.

Raises
------
InvalidInput
    A condition is out of range.

Notes
-----
The curve of one panel, its voltage times the panels in series and its current times the strings. No
loss by mismatch. Valid for cells from -60 to 110 °C.

References
----------
de-soto-2006 : single-diode model

See Also
--------
SingleDiode.at : Equations for one panel.

Examples
--------
>>> import heatmatch as hm
>>> array = hm.Array.uniform(hm.Catalog.starter().panels["silicon-60-cell-245"], series=2)
>>> curve = array.at(irradiance_w_m2=600, cell_temperature_c=35)
>>> print(f"{curve.open_circuit_voltage_v:.0f} V")
71 V)";

}  // namespace heatmatch::python::docs
