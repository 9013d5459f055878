#pragma once

// Docstrings of I-V curves and their operating points.
namespace heatmatch::python::docs {

inline constexpr const char* curve_current_a = R"(Compute the current at a terminal voltage.

Parameters
----------
voltage_v : float or array_like
    Terminal voltage [V], any shape.

Returns
-------
float or numpy.ndarray
    Current [A]; negative above the open-circuit voltage.

Raises
------
InvalidInput
    `voltage_v` is not a number or an array of numbers.

Notes
-----
``I = IL - I0 (exp((V + I Rs) / a) - 1) - (V + I Rs) Gsh``

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.fit_single_diode(hm.Catalog.starter().panels["silicon-60-cell-245"])
>>> curve = panel.at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.current_a(25.0):.2f} A")
6.89 A)";

inline constexpr const char* curve_voltage_v = R"(Compute the terminal voltage at a current.

Parameters
----------
current_a : float or array_like
    Current [A], any shape.

Returns
-------
float or numpy.ndarray
    Terminal voltage [V]; -inf if no voltage gives the current (without a shunt only).

Raises
------
InvalidInput
    `current_a` is not a number or an array of numbers.

Notes
-----
``I = IL - I0 (exp((V + I Rs) / a) - 1) - (V + I Rs) Gsh``

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.fit_single_diode(hm.Catalog.starter().panels["silicon-60-cell-245"])
>>> curve = panel.at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.voltage_v(5.0):.1f} V")
31.2 V)";

inline constexpr const char* curve_into_resistance =
    R"(Compute the operating point into a resistance.

Parameters
----------
resistance_ohm : float or array_like
    Load resistance [ohm], 0 to inf, any shape; nan gives nan.

Returns
-------
OperatingPoint or OperatingPoints
    Voltage [V], current [A] and power [W]: numbers for a number, arrays for an array.

Raises
------
InvalidInput
    A resistance is below 0, or `resistance_ohm` is not numeric.

Notes
-----
Solves ``V = I R`` on the I-V curve; relative error about 1e-15.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.fit_single_diode(hm.Catalog.starter().panels["silicon-60-cell-245"])
>>> curve = panel.at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.into_resistance(4.0).power_w:.0f} W")
182 W
>>> print(curve.into_resistance([2.0, 4.0, 8.0]).power_w.round())
[ 97. 182. 130.])";

inline constexpr const char* curve_maximum_power = R"(Compute the maximum power point.

Returns
-------
OperatingPoint
    Voltage [V], current [A] and power [W].

Notes
-----
Solves ``dP/dV = 0`` on the I-V curve.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.fit_single_diode(hm.Catalog.starter().panels["silicon-60-cell-245"])
>>> curve = panel.at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.maximum_power().power_w:.0f} W")
184 W)";

inline constexpr const char* operating_points =
    R"(Compute the operating points of many curves into as many resistances.

Parameters
----------
light_current_a : array_like
    Light-generated currents IL [A]. All six arrays have one shape.
ln_saturation_current : array_like
    Natural logarithms of the saturation currents over 1 A, ln(I0 / 1 A) [dimensionless].
series_resistance_ohm : array_like
    Series resistances Rs [ohm].
shunt_conductance_s : array_like
    Shunt conductances Gsh [S].
ideality_v : array_like
    Modified ideality factors a = n Ns k T / q [V].
resistance_ohm : array_like
    Load resistances [ohm], 0 to inf.

Returns
-------
OperatingPoints
    Voltages [V], currents [A] and powers [W], arrays of the shape of `resistance_ohm`.

Raises
------
InvalidInput
    The arrays differ in size.

Notes
-----
Solves ``V = I R`` on ``I = IL - I0 (exp((V + I Rs) / a) - 1) - (V + I Rs) Gsh``; relative error
about 1e-15.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import numpy as np
>>> import heatmatch as hm
>>> ohms = np.array([2.0, 4.0, 8.0])
>>> same = np.ones(3)
>>> points = hm.operating_points(8.5 * same, -20 * same, 0.3 * same, 0.003 * same, 1.6 * same, ohms)
>>> print(points.power_w.round())
[143. 221. 137.])";

}  // namespace heatmatch::python::docs
