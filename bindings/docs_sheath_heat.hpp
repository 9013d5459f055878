#pragma once

// Docstrings of register_sheath_heat.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* sheath_temperature =
    R"(Compute the temperatures of a store that equal elements heat.

Parameters
----------
element : Element
    One of the elements; its lengths are needed.
store : Store
    The store; its sizes are needed.
power_w : float
    Power of all elements together [W], 0 to 1000000.
hours : float
    Charging time per day [h], above 0 up to 24.
air_c : float
    Air temperature around the store [°C], -60 to 80; the store starts at it.
days : float
    Equal days in a row [dimensionless], 1 to 3660.
moist : bool
    Whether the fill is still moist.
elements : int
    Number of elements, 1 or more.
medium : Medium, Catalog or None
    The fill, or the catalog that has it under the id in `store`. None: the starter catalog.

Returns
-------
SheathTemperature
    Sheath, coil, bed, wall and lid at the end of the last charge, each a band [°C]; the sheath
    temperature that is judged [°C]; the load per heated length [W/cm].

Raises
------
InvalidInput
    A number is out of range, a length or size is missing, or the elements do not fit the store.
NotFound
    The catalog has no such medium.

Notes
-----
Granular and solid fills: the closed form of ``BedCharge.temperatures``, at the low, typical and
high end of the conductivity of the fill. Water: one temperature, up to 100 °C; the sheath loses
heat by free convection of 700 to 1500 W/m2K, until it boils locally 10 to 25 K above 100 °C (from
memory). The judged sheath temperature has low conductivity, and a rise multiplied by 1.10.

References
----------
carslaw-jaeger : line sources in a solid

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["storage-rod-1000-240"]
>>> hot = hm.sheath_temperature(element, hm.demo().store, power_w=600, elements=4)
>>> print(f"{hot.sheath_verdict_c:.0f} °C at {hot.w_per_cm:.1f} W/cm")
337 °C at 1.0 W/cm)";

inline constexpr const char* packed_bed_conductivity =
    R"(Compute the thermal conductivity of grains in air.

Parameters
----------
temperature_c : float
    Temperature of the bed [°C], -60 to 1500.
porosity : float
    Share of the volume that is air [dimensionless], 0.05 to 0.95.
grain_mm : float
    Diameter of the grains [mm], 0.001 to 200.
solid_w_mk : float
    Conductivity of the grains at that temperature [W/mK], 0.02 to 500.
emissivity : float
    Emissivity of the grains [dimensionless], 0.01 to 1.
shape : float
    Shape factor [dimensionless], 1 to 3: 1.25 for spheres, 1.4 for broken grains.
contact : float
    Flattened share of the grain surface [dimensionless], 0 to 0.2; 0.0077 for sand.

Returns
-------
float
    Conductivity [W/mK].

Raises
------
InvalidInput
    A parameter is out of range.

Notes
-----
Unit cell of Zehner and Schluender with radiation and contact of Bauer, and with the rarefied gas of
narrow gaps. Accurate within 10 to 30 % from 300 to 1300 K; too high at low temperatures.

References
----------
vdi-heat-atlas : equations
zbs-asme-1994 : comparison with measurements

Examples
--------
>>> import heatmatch as hm
>>> print(f"{hm.packed_bed_conductivity(temperature_c=300):.2f} W/mK")
0.52 W/mK)";

inline constexpr const char* sheath_in_air_c =
    R"(Compute the temperature of a sheath in still air, dry-fired outside its bed.

Parameters
----------
diameter_mm : float
    Diameter of the sheath [mm], 0.5 to 300.
w_per_cm : float or array_like
    Power per heated length [W/cm], 0 to 1000, any shape.
emissivity : float
    Emissivity of the sheath [dimensionless], 0 to 1.
air_c : float
    Air temperature [°C], -60 to 900.

Returns
-------
float or numpy.ndarray
    Sheath temperature [°C], at most 3227.

Raises
------
InvalidInput
    A number is out of range.

Notes
-----
``q' = pi D (h (Ts - Ta) + eps sigma (Ts^4 - Ta^4))``, ``h`` by free convection around a long
horizontal cylinder, Rayleigh number up to 1e12.

References
----------
churchill-chu-1975 : free convection around a cylinder

Examples
--------
>>> import heatmatch as hm
>>> print(f"{hm.sheath_in_air_c(diameter_mm=8, w_per_cm=5.0):.0f} °C")
447 °C)";

inline constexpr const char* coil_above_sheath_k =
    R"(Compute how much hotter the coil is than its sheath.

Parameters
----------
w_per_cm : float or array_like
    Power per heated length [W/cm], 0 to 1000, any shape.

Returns
-------
float or numpy.ndarray
    Difference of temperature [K].

Raises
------
InvalidInput
    A number is out of range.

Notes
-----
``q' / (2 pi k) ln(0.85 / 0.4)``: magnesia of ``k`` = 2.3 W/mK, between 0.4 and 0.85 of the radius
of the sheath. Dimensions are from memory.

Examples
--------
>>> import heatmatch as hm
>>> print(f"{hm.coil_above_sheath_k(w_per_cm=5.0):.0f} K")
26 K)";

}  // namespace heatmatch::python::docs
