#pragma once

// Docstrings of register_heat.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* conductor_temperature =
    R"(Compute the steady temperature of a single wire.

Parameters
----------
wire : Wire
    The wire.
current_a : float
    Current [A], 0 to 100000.
surroundings : Surroundings
    Surroundings of the wire; their ``air_c`` is needed.
insulation : Insulation or None
    Insulation of the wire, for its conductivity and thickness.

Returns
-------
ConductorTemperature or None
    Temperatures of conductor and surface [°C]; None if `surroundings` lack the temperature.

Raises
------
InvalidInput
    `current_a` is out of range.

Notes
-----
Heat made in the conductor passes the insulation and leaves its surface of diameter ``Do``, in air::

    I^2 R(Tc) = (Tc - Ts) / Rins
              = pi Do (h (Ts - Ta) + eps sigma (Ts^4 - Ta^4)) - alpha G Do

``eps = alpha = 0.9``; ``h`` by Churchill and Chu in still air, by Churchill and Bernstein in wind.
In conduit, in the ground and in a bundle, the current counts as ``I / 0.7``, an estimate. Beyond
three loaded conductors it is divided by the adjustment of the code as well. In a bed, heat passes
0.1 m of dry sand (0.20 W/mK); in a cavity, 0.1 m of mineral wool (0.04 W/mK), a hot bound. Without
a steady state, ``runaway`` is True and the temperatures are lower bounds.

References
----------
churchill-chu-1975 : free convection
churchill-bernstein-1977 : wind across the wire
nec-310-reproduction : adjustment for more than three loaded conductors
kiyohashi-2003 : conductivity of dry sand

Examples
--------
>>> import heatmatch as hm
>>> wire = hm.Catalog.starter().wires["thhn-12-awg"]
>>> hot = hm.conductor_temperature(
...     wire, current_a=20, surroundings=hm.Surroundings.open_air(40)
... )
>>> print(f"{hot.conductor_c:.0f} °C")
53 °C)";

inline constexpr const char* element_resistance =
    R"(Compute the resistance of an element at a coil temperature.

Parameters
----------
element : Element
    The element.
alloy : Alloy or None
    Alloy of its coil. None: unknown, which widens the band.
coil_temperature_c : float
    Coil temperature [°C], -60 to 3000.

Returns
-------
ElementResistance
    Low, typical and high resistance [ohm], and what they follow from.

Raises
------
InvalidInput
    `coil_temperature_c` is out of range.

Notes
-----
Measured resistance (within 1 %) has priority over printed resistance, and that over ``V^2 / P`` at
the rating. ``R(T) = R(20 °C) f(T)``, ``f`` from the table of the alloy. For an unknown alloy, ``f``
at 700 °C is 0.97 to 1.17, typically 1.02, and in proportion below. Printed values and ratings have
the power tolerance of the element, +5/-10 % by default. Ratings hold at a coil temperature of
600 °C (from memory).

References
----------
gb-t-1234 : resistance of alloys over temperature
tubular-catalogue-tolerance : default tolerance

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["storage-rod-1000-240"]
>>> hot = hm.element_resistance(element, coil_temperature_c=300)
>>> print(f"{hot.low_ohm:.0f} to {hot.high_ohm:.0f} ohm")
51 to 65 ohm)";

}  // namespace heatmatch::python::docs
