#pragma once

// Docstrings of register_parts.cpp.
namespace heatmatch::python::docs {

// Examples of what all kinds share, see with_example().
inline constexpr const char* part_class_example = R"(>>> {part}.kind
'{part}')";
inline constexpr const char* part_init_example =
    R"(>>> hm.{class}(**({part}.to_dict() | {"id": "mine"})).id
'mine')";
inline constexpr const char* part_replace_example = R"(>>> {part}.replace(notes="as bought").notes
'as bought')";
inline constexpr const char* part_to_dict_example = R"(>>> {part}.to_dict()["label"] == {part}.label
True)";
inline constexpr const char* part_json_example =
    R"(>>> hm.{class}.from_json({part}.to_json()) == {part}
True)";

inline constexpr const char* part_init = R"(Make a part from its fields.

Parameters
----------
**arguments : number, str, list, dict or None
    Values by field; a number may be text with a unit. None, or no value, leaves a field unknown.
    ``glossary`` lists fields, units and ranges.

Raises
------
InvalidInput
    A field is unknown, missing or out of range.)";

inline constexpr const char* part_from_json = R"(Read a part from a JSON object.

Parameters
----------
text : str
    JSON text of one object; its keys are the fields of the part.

Returns
-------
Panel, Element or another kind of part
    A part of the class that was called.

Raises
------
InvalidInput
    The text is not a JSON object, or a field is unknown, missing or out of range.)";

inline constexpr const char* part_replace = R"(Copy the part with some fields changed.

Parameters
----------
**changes : number, str, list, dict or None
    New values by field; a number may be text with a unit. None makes a field unknown.

Returns
-------
Panel, Element or another kind of part
    The changed copy.

Raises
------
InvalidInput
    A field is unknown or out of range.)";

inline constexpr const char* part_to_dict = R"(Convert the part to a dict.

Returns
-------
dict
    Known fields by name, in the unit of the name.)";

inline constexpr const char* part_to_json = R"(Convert the part to JSON.

Returns
-------
str
    JSON object of the known fields.)";

inline constexpr const char* listed_diode = R"(Read the published single diode of the panel.

Returns
-------
SingleDiode
    Parameters at 1000 W/m2 and 25 °C.

Raises
------
InvalidInput
    The panel lists no six-parameter fit.

Notes
-----
The coefficient of the light-generated current is ``alpha (1 - Adjust / 100)``, as in the model of
the California Energy Commission.

References
----------
dobos-2012 : six-parameter model

Examples
--------
>>> import heatmatch as hm
>>> fit = {"light_current_a": 8.5, "saturation_current_a": 2e-9, "series_resistance_ohm": 0.3,
...        "shunt_resistance_ohm": 300, "modified_ideality_v": 1.6, "adjust_pct": 10,
...        "band_gap_ev": 1.121, "band_gap_per_k": -0.0002677}
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"].replace(listed_fit=fit)
>>> panel.listed_diode().series_resistance_ohm
0.3)";

inline constexpr const char* wire_resistance_ohm_per_m =
    R"(Compute the resistance of one meter of conductor.

Parameters
----------
temperature_c : float
    Temperature of the conductor [°C], -60 to 1500.

Returns
-------
float
    Resistance [ohm/m].

Raises
------
InvalidInput
    `temperature_c` is out of range.

Notes
-----
``R20 (1 + alpha (T - 20))``; without a printed figure ``R20 = rho20 k / A``, ``k`` = 1.02 for
strands. Copper: 1/58 ohm mm2/m and 0.00393 1/K. Nickel-clad copper (1.4 times copper) and nickel
(0.090 ohm mm2/m, 0.0061 1/K) are from memory. Valid from -50 to 500 °C.

References
----------
iec-60028 : copper

Examples
--------
>>> import heatmatch as hm
>>> wire = hm.Catalog.starter().wires["fep-14-awg"]
>>> print(f"{1000 * wire.resistance_ohm_per_m(temperature_c=150):.1f} mohm/m")
12.8 mohm/m)";

inline constexpr const char* control_breaking_current_a =
    R"(Find the current that the control may break at a DC voltage.

Parameters
----------
voltage_v : float
    DC voltage [V], 0 to 100000.
poles : int
    Poles wired in series, 1 to 8.

Returns
-------
float or None
    Current [A]; None if no printed pair reaches that voltage with that many poles.

Raises
------
InvalidInput
    A number is out of range.

Notes
-----
The largest of the printed pairs of voltage and current; pairs are not interpolated.

References
----------
iec-60947-3 : DC ratings of switches

Examples
--------
>>> import heatmatch as hm
>>> hm.Catalog.starter().controls["pv-isolator-2-pole"].breaking_current_a(voltage_v=105, poles=2)
16.0)";

}  // namespace heatmatch::python::docs
