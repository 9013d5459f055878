#pragma once

// Docstrings of register_mixed_array.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* string_panel =
    R"(Describe a panel of a string: its cells and bypass diodes.

Parameters
----------
panel_or_diode : Panel or SingleDiode
    The panel; a Panel is fitted to its label first.
substrings : int, optional
    Equal parts of the panel with one bypass diode across each, 1 or more; by default `bypass_diodes`
    of a Panel, 1 for a SingleDiode. Where a Panel does not state it, crystalline silicon counts 3
    and thin film has no bypass diode.
bypass : bool, optional
    Whether there are bypass diodes; by default as the Panel states, True for a SingleDiode.
bypass_v : float
    Voltage across a conducting bypass diode [V], 0 to 2.

Raises
------
InvalidInput
    A number is out of range, or no diode has the label of the panel.

Notes
-----
A substring has 1/n of the panel's voltages, series resistance and shunt resistance.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> hm.StringPanel(panel, bypass=False).bypass
False)";

inline constexpr const char* mixed_array_curve_at_voltage =
    R"(Compute volts, amperes and watts of every string and panel at a voltage of the array.

Parameters
----------
voltage_v : float
    Voltage of the array [V], from 0 to its open-circuit voltage.

Returns
-------
ArrayPoint
    The point of the array, its strings and their panels.

Raises
------
InvalidInput
    The voltage is out of range.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 150], cell_temperature_c=30)
>>> point = curve.at_voltage(curve.into_resistance(4.0).voltage_v)
>>> [each.substrings_bypassed for each in point.strings[0].panels]
[0, 3])";

inline constexpr const char* power_maxima =
    R"(Compute every maximum of power over voltage.

Returns
-------
list of OperatingPoint
    The maxima, by rising voltage. Shade and unlike panels make several.

Notes
-----
Between two voltages at which a diode begins to conduct power is a concave function of voltage, so
that there is one maximum there at most.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 300], cell_temperature_c=30)
>>> len(curve.power_maxima())
2)";

}  // namespace heatmatch::python::docs
