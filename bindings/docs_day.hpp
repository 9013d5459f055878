#pragma once

// Docstrings of functions in register_day.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* simulate_day = R"(Simulate a candidate over consecutive days.

Parameters
----------
candidate : Candidate
    The circuit; it needs a store, and the lengths of its elements.
weather : Weather
    Weather of the days.
month : int or None
    Month of the first day, 1 to 12. None: begin with the first row of `weather`.
days : int or None
    Number of days, 1 to 3660. None: to the end of the month, or of the weather.
air_shift_k : float
    Difference between the air temperature and the weather data [K].
electrical_step_s : float
    Step of power [s], 1 to 3600.
thermal_step_s : float
    Step of temperatures [s], 1 to 3600; the step of the results.
warm_up_days : int
    Repetitions of the first day before the run, 0 to 60.
start_c : float or None
    Temperature of the store before the warm-up [°C], -60 to 1000. None: that of the air around it.
conductivity : str
    End of the conductivity of the fill: "low" (hottest sheath), "typical" or "high".
switches : str
    "works", "thermostat welded", or "breaker welded" (nothing opens the circuit).
extraction_w_k : float
    Heat that a fan or loop moves from the bed to the space, per kelvin between them [W/K],
    0 to 10000.
extraction_from_hour : float
    Hour of the day from which it runs [h], 0 to 24.
extraction_until_hour : float
    Hour of the day until which it runs [h], 0 to 24; if below the other, it runs past midnight.
air_around_c : float or None
    Constant air temperature around the store [°C], -60 to 80; no space is heated then.
progress : bool, callable or None
    True for a progress bar, or a function that is called with the completed share, 0 to 1.

Returns
-------
DayRun
    Powers [W] and temperatures [°C] at the end of every thermal step, and the energy of all
    days [kWh].

Raises
------
InvalidInput
    An option is out of range, the store, a size of it or a length of the element is not known, or
    the elements do not fit.

Notes
-----
Heat in the store by radius and height (water: one temperature). Resistance of the bank is at coil
temperature, that of the wires at their current. Thermostat and limit open the circuit only if they
can break this DC. Only the store warms the space: sun through its covers, heat from the ground and
other sources are left out.)";

inline constexpr const char* simulate_circuits =
    R"(Simulate all circuits of one store over consecutive days.)";

}  // namespace heatmatch::python::docs
