#pragma once

// Docstrings of register_bed.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* bed_charge =
    R"(Describe a bed that equal elements charge with constant power.

Parameters
----------
element : Element
    One of the elements; its lengths are needed.
store : Store
    The store; its sizes are needed.
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
conductivity : str
    End of the conductivity of the fill: "low" (hottest sheath), "typical" or "high".
medium : Medium, Catalog or None
    The fill, or the catalog that has it under the id in `store`. None: the starter catalog.

Raises
------
InvalidInput
    A number is out of range, a length or size is missing, the elements do not fit the store, or the
    fill is a liquid.
NotFound
    The catalog has no such medium.

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["storage-rod-1000-240"]
>>> bed = hm.BedCharge(element, hm.demo().store, elements=4)
>>> print(f"{bed.sheath_c(600):.0f} °C")
308 °C)";

inline constexpr const char* bed_temperatures =
    R"(Compute the temperatures at the end of the last charge.

Parameters
----------
power_w : float
    Power of all elements together [W], 0 to 1000000.

Returns
-------
BedTemperatures
    Sheath, bed, wall and lid [°C].

Raises
------
InvalidInput
    `power_w` is out of range.

Notes
-----
Each leg of length ``L`` is a line source on a bulk of one time constant. With ``q'`` the power per
length, ``d_j`` the distance to leg ``j``, ``a`` the diffusivity, ``t`` the time, ``E1`` the
exponential integral and ``Theta`` the integral of conductivity over temperature::

    Theta(Ts) = Theta(Tb) + q'/(2 pi) sum_j (asinh(L/(2 d_j)) - asinh(L/(2 rho_j)))
    rho_j = (d_j^-4 exp(-2 E1(d_j^2/(4 a t))) + rm^-4)^(-1/4)
    rho_0 = ((d_0^2 + 2.246 a t)^-2 + rm^-4)^(-1/4)

The rise is within about 7 % of a three-dimensional solution from 1 to 8 h.

References
----------
carslaw-jaeger : line sources in a solid)";

inline constexpr const char* bed_sheath_c =
    R"(Compute the temperature of the hottest leg at the end of the last charge.

Parameters
----------
power_w : float or array_like
    Power of all elements together [W], 0 to 1000000, any shape.

Returns
-------
float or numpy.ndarray
    Sheath temperature [°C].

Raises
------
InvalidInput
    A power is out of range.

See Also
--------
BedCharge.temperatures : Equations.)";

inline constexpr const char* bed_temperature_c =
    R"(Compute the temperature in the bed at a distance from the hottest leg, halfway along it.

Parameters
----------
distance_m : float or array_like
    Distance from the leg [m], 0 to 100, any shape.
power_w : float
    Power of all elements together [W], 0 to 1000000.

Returns
-------
float or numpy.ndarray
    Temperature at the end of the last charge [°C].

Raises
------
InvalidInput
    A number is out of range.

See Also
--------
BedCharge.temperatures : Equations.)";

inline constexpr const char* bed_largest_power_w =
    R"(Find the largest power that keeps the sheath at or below a limit.

Parameters
----------
limit_c : float
    Limit of the sheath temperature [°C], -60 to 2000.
factor : float
    Factor of the rise above air temperature [dimensionless], 1 to 3, for the error of the model.

Returns
-------
float
    Power of all elements together [W]; 0 if the air is hotter than the limit.

Raises
------
InvalidInput
    A number is out of range.

See Also
--------
BedCharge.temperatures : Equations.)";

inline constexpr const char* bed_hours_to_limit =
    R"(Compute the time until the sheath reaches a limit at constant power.

Parameters
----------
power_w : float or array_like
    Power of all elements together [W], 0 to 1000000, any shape.
limit_c : float
    Limit of the sheath temperature [°C], -60 to 2000.
longest_h : float
    Longest time considered [h], 0.001 to 100000.

Returns
-------
float or numpy.ndarray
    Time from a store at air temperature [h]; inf if it is longer than `longest_h`.

Raises
------
InvalidInput
    A number is out of range.

See Also
--------
BedCharge.temperatures : Equations.)";

inline constexpr const char* largest_power_w =
    R"(Find the largest power of all elements that keeps the sheath at or below a limit.

Parameters
----------
element : Element
    One of the elements; its lengths are needed.
store : Store
    The store; its sizes are needed.
limit_c : float
    Limit of the sheath temperature [°C], -60 to 2000.
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
conductivity : str
    End of the conductivity of the fill: "low" (hottest sheath), "typical" or "high".
factor : float
    Factor of the rise above air temperature [dimensionless], 1 to 3, for the error of the model.
medium : Medium, Catalog or None
    The fill, or the catalog that has it under the id in `store`. None: the starter catalog.

Returns
-------
float
    Power of all elements together [W]; 0 if the air is hotter than the limit.

Raises
------
InvalidInput
    A number is out of range, a length or size is missing, the elements do not fit the store, or the
    fill is a liquid.
NotFound
    The catalog has no such medium.

Notes
-----
Inverse of ``BedCharge.temperatures``, where the equations are: ``Ta + factor (Ts - Ta) = limit``.
The rise is within about 7 % of a three-dimensional solution from 1 to 8 h.

References
----------
carslaw-jaeger : line sources in a solid

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["storage-rod-1000-240"]
>>> power = hm.largest_power_w(element, hm.demo().store, limit_c=400, elements=4)
>>> print(f"{power:.0f} W")
739 W)";

inline constexpr const char* hours_to_limit =
    R"(Compute the time until the sheath reaches a limit at constant power.

Parameters
----------
element : Element
    One of the elements; its lengths are needed.
store : Store
    The store; its sizes are needed.
power_w : float or array_like
    Power of all elements together [W], 0 to 1000000, any shape.
limit_c : float
    Limit of the sheath temperature [°C], -60 to 2000.
air_c : float
    Air temperature around the store [°C], -60 to 80; the store starts at it.
moist : bool
    Whether the fill is still moist.
elements : int
    Number of elements, 1 or more.
conductivity : str
    End of the conductivity of the fill: "low" (hottest sheath), "typical" or "high".
longest_h : float
    Longest time considered [h], 0.001 to 100000.
medium : Medium, Catalog or None
    The fill, or the catalog that has it under the id in `store`. None: the starter catalog.

Returns
-------
float or numpy.ndarray
    Time from a store at air temperature [h]; inf if it is longer than `longest_h`.

Raises
------
InvalidInput
    A number is out of range, a length or size is missing, the elements do not fit the store, or the
    fill is a liquid.
NotFound
    The catalog has no such medium.

Notes
-----
Inverse of ``BedCharge.temperatures``, where the equations are, without a factor for the error of
the model: about 7 % of the rise, from 1 to 8 h.

References
----------
carslaw-jaeger : line sources in a solid

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["storage-rod-1000-240"]
>>> time_h = hm.hours_to_limit(element, hm.demo().store, power_w=1000, limit_c=400, elements=4)
>>> print(f"{time_h:.1f} h")
2.5 h)";

}  // namespace heatmatch::python::docs
