#pragma once

// Docstrings of register_bank_heat.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* bank_heat_at =
    R"(Compute the temperatures of the store at a power of each element.

Parameters
----------
element_w : float
    Power of each element [W], 0 to 100000.

Returns
-------
HeatPoint or None
    Temperatures [°C] and load per heated length [W/cm]; None if a length, a size or the fill is
    not known, or the elements do not fit.

Raises
------
InvalidInput
    `element_w` is out of range.

Notes
-----
Judged temperatures are at the worst end of the conductivity of the fill; the rise of the sheath is
multiplied by 1.10 for the error of the model.

See Also
--------
sheath_temperature : Equations.)";

inline constexpr const char* bank_heat_largest_element_w =
    R"(Find the largest power of one element within the limits of its sheath and coil.

Parameters
----------
with_stagnation : bool
    Whether the limits must hold after fourteen bright days in the hottest air as well.

Returns
-------
float or None
    Power of one element [W]; 0 if the elements do not fit, None if no limit is known.

See Also
--------
BankHeat.at : Temperatures at a power.)";

inline constexpr const char* bank_heat_bed =
    R"(Describe the bed with the charge that margins assume.

Parameters
----------
conductivity : str
    End of the conductivity of the fill: "low" (hottest sheath), "typical" or "high".
stagnation : bool
    Whether it is charged for fourteen bright days in the hottest air.
moist : bool
    Whether the fill is still moist.

Returns
-------
BedCharge
    The bed, ready for any power.

Raises
------
InvalidInput
    `conductivity` is unknown, a length or size is missing, the elements do not fit, or the fill is
    a liquid.)";

}  // namespace heatmatch::python::docs
