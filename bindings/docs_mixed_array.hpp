#pragma once

// Docstrings of register_mixed_array.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* class_mixed_array_curve =
    R"(I-V curve of an array of unlike panels, from 0 V to its open-circuit voltage.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 300], cell_temperature_c=30)
>>> curve.maximum_power().power_w <= curve.sum_of_maxima_w
True)";

inline constexpr const char* class_array_point =
    R"(Operating point of an array with all its strings and panels.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 300], cell_temperature_c=30)
>>> len(curve.at_voltage(30.0).strings[0].panels)
2)";

inline constexpr const char* class_string_point =
    R"(Operating point of one string of an array.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 300], cell_temperature_c=30)
>>> string = curve.at_voltage(30.0).strings[0]
>>> string.current_a == string.panels[0].current_a
True)";

inline constexpr const char* class_panel_point =
    R"(Operating point of one panel of an array.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 300], cell_temperature_c=30)
>>> curve.at_voltage(20.0).strings[0].panels[1].substrings_bypassed
3)";

inline constexpr const char* class_string_panel = R"(Panel of a string, with its bypass diodes.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> hm.StringPanel(panel, substrings=2).substrings
2)";

inline constexpr const char* class_mixed_array = "Strings of unlike panels in parallel.";

inline constexpr const char* string_panel =
    R"(Describe a panel of a string by its diode and its bypass diodes.

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
    R"(Compute voltage, current and power of every string and panel at an array voltage.

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

Notes
-----
Each string carries the current at which its panels' voltages, less a blocking diode's, add up to
that of the array: ``V = sum of max(v(I), -bypass_v) - blocking_v``.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 150], cell_temperature_c=30)
>>> point = curve.at_voltage(curve.into_resistance(4.0).voltage_v)
>>> [each.bypassed for each in point.strings[0].panels]
[[False, False, False], [True, True, True]])";

inline constexpr const char* power_maxima =
    R"(Compute every maximum of power over voltage.

Returns
-------
list of OperatingPoint
    The maxima, by rising voltage. Shade and unlike panels make several.

Notes
-----
Between two voltages at which a diode begins to conduct, power is a concave function of voltage: it
has one maximum there at most.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.Array([[panel, panel]]).at(irradiance_w_m2=[800, 300], cell_temperature_c=30)
>>> len(curve.power_maxima())
2)";

}  // namespace heatmatch::python::docs
