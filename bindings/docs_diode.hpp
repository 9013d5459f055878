#pragma once

// Docstrings of single diodes and their fits (register_diode.cpp).
namespace heatmatch::python::docs {

inline constexpr const char* single_diode =
    R"(Make a panel from its single-diode parameters at 1000 W/m2 and 25 °C.

Parameters
----------
light_current_a : float
    Light-generated current IL [A], above 0.
saturation_current_a : float
    Saturation current I0 [A], above 0.
series_resistance_ohm : float
    Series resistance Rs [ohm], 0 or more.
shunt_resistance_ohm : float
    Shunt resistance [ohm], above 0; inf for none.
modified_ideality_v : float
    Modified ideality factor a = n Ns k T / q [V], above 0.
alpha_isc_a_per_k : float
    Change of the light-generated current with temperature [A/K], -1 to 1.
band_gap_ev : float
    Band gap at 25 °C [eV], 0.1 to 5.
band_gap_per_k : float
    Relative change of the band gap with temperature [1/K], -0.01 to 0.01.

Raises
------
InvalidInput
    A parameter is out of range.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.SingleDiode(
...     light_current_a=8.5, saturation_current_a=2e-9, series_resistance_ohm=0.3,
...     shunt_resistance_ohm=300, modified_ideality_v=1.6,
... )
>>> curve = panel.at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.into_resistance(4.0).power_w:.0f} W")
165 W)";

inline constexpr const char* single_diode_at =
    R"(Compute the I-V curve at an irradiance and a cell temperature.

Parameters
----------
irradiance_w_m2 : float
    Irradiance on the cells [W/m2], 0 to 3000.
cell_temperature_c : float
    Cell temperature [°C], -90 to 150.

Returns
-------
DiodeCurve
    The I-V curve; without light it has no current.

Raises
------
InvalidInput
    A condition is out of range.

Notes
-----
De Soto, with ``T`` the cell temperature [K], ``dT`` its difference to 25 °C and ``G`` the
irradiance [W/m2]::

    IL(G, T) = G/1000 (IL + alpha dT)
    Gsh(G)   = Gsh G/1000
    a(T)     = a T/298.15
    I0(T)    = I0 (T/298.15)^3 exp(Eg(25 °C) / (k 298.15) - Eg(T) / (k T))
    Eg(T)    = Eg (1 + C dT)

The series resistance may change with temperature, down to a tenth. Valid for cells from -60 to
110 °C.

References
----------
de-soto-2006 : translation to other conditions

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.fit_single_diode(hm.Catalog.starter().panels["silicon-60-cell-245"])
>>> curve = panel.at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.short_circuit_current_a:.1f} A")
7.0 A)";

inline constexpr const char* single_diode_scaled = R"(Multiply all currents and all voltages.

Parameters
----------
current_factor : float
    Factor of all currents [dimensionless], above 0 up to 100; below 1 for shade, dirt or age.
voltage_factor : float
    Factor of all voltages [dimensionless], above 0 up to 100; below 1 for bypassed sections.

Returns
-------
SingleDiode
    The panel with both factors applied.

Raises
------
InvalidInput
    A factor is out of range.

Notes
-----
``I(V) -> f_I I(V / f_V)``, with the two factors.

References
----------
de-soto-2006 : single-diode model

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.fit_single_diode(hm.Catalog.starter().panels["silicon-60-cell-245"])
>>> shaded = panel.scaled(current_factor=0.5, voltage_factor=1.0)
>>> round(shaded.light_current_a / panel.light_current_a, 3)
0.5)";

inline constexpr const char* fit_single_diode = R"(Fit a single diode to the label of a panel.

Parameters
----------
panel : Panel
    The panel. Missing coefficients come from the defaults of its technology, listed in ``assumed``.
use_gamma : bool
    Whether the series resistance changes with temperature to meet the power coefficient.

Returns
-------
DatasheetFit
    The single diode, with how the label was met.

Raises
------
InvalidInput
    No single diode fits the label: a value is not positive, `i_mp` is not below `i_sc`, `v_mp` is not
    below `v_oc`, ``v_mp/v_oc + i_mp/i_sc`` is not above 1, or ``v_mp/v_oc`` is not above 0.5.

Notes
-----
Five parameters of De Soto from three points at STC, from ``dP/dV = 0`` at the maximum, and from the
coefficient of `v_oc`; the solution is unique where it exists. If no diode gives that split of power
into `v_mp` and `i_mp`, power is kept and ``vmp_shift`` states the change. With `use_gamma`,
``Rs(T) = Rs (1 + rho (T - 25))`` with ``|rho| <= 0.012`` per K.

References
----------
de-soto-2006 : five parameters from a label
dobos-2012 : refused labels

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> fit = hm.fit_single_diode(panel)
>>> best = fit.at(irradiance_w_m2=1000, cell_temperature_c=25).maximum_power()
>>> print(f"{best.power_w:.0f} W")
245 W)";

inline constexpr const char* cold_voltage =
    R"(Compute the open-circuit voltage of one panel at the record low.

Parameters
----------
panel : Panel
    The panel. Without a coefficient of `v_oc`, the default of its technology applies.
record_low_c : float
    Record low of the air temperature [°C], -70 to 40.

Returns
-------
float
    Open-circuit voltage [V].

Raises
------
InvalidInput
    `record_low_c` is out of range.

Notes
-----
``Voc = Voc(25 °C) (1 + beta (T - 25))``, 0.07 to 0.23 % above the single diode. With a default
coefficient, the code's factor for crystalline silicon applies if it is larger: 1.02 from 20 to
25 °C, rising to 1.25 below -35 °C.

References
----------
nec-690-7 : factors for crystalline silicon

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> print(f"{hm.cold_voltage(panel, record_low_c=-30):.1f} V")
44.7 V)";

}  // namespace heatmatch::python::docs
