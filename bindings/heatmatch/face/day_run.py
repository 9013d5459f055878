"""A circuit simulated over consecutive days."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held, call
from heatmatch.face.day_answer import DayAnswer
from heatmatch.io import frames_day
from heatmatch.text import day, forms
from heatmatch.text.plain import plain, plain_line

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt
    import pandas as _pd

    from heatmatch._core import DayEnergy, SwitchEvent
    from heatmatch.choices import BedModel
    from heatmatch.face.candidate import Candidate
    from heatmatch.face.weather import Weather

    _Numbers = npt.NDArray[np.float64]


class DayRun(Face):
    """A circuit simulated over consecutive days by ``simulate_day``.

    Arrays have one value per thermal step, at its end; powers are means over the step.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> run = hm.simulate_day(circuit, hm.Weather.from_installation(hm.demo()), month=1, days=1)
    >>> len(run) == len(run.sheath_c) == 288
    True
    """

    __slots__ = ()
    _made_by = "simulate_day(candidate, weather)"

    candidate: Held[Candidate] = Held("Circuit that is simulated.")
    answer: Held[DayAnswer] = Held("Dark hours, heat and highest temperatures over all days.")
    title: Held[str] = Held("Title of the circuit.")
    days: Held[float] = Held("Number of days simulated [days].")
    first_hour: Held[float] = Held("Hour of the day at the beginning, by mean solar time [h].")
    heats_space: Held[bool] = Held("Whether the store heats a space with known losses.")
    bed_model: Held[BedModel] = Held('Model of the fill: "r-z field" (radius, height) or "water".')
    energy: Held[DayEnergy] = Held("Energy over all days [kWh].")
    events: Held[list[SwitchEvent]] = Held("Actions of controls, in the order of time.")
    remarks: Held[list[str]] = Held("Main remarks, in words.")
    assumed: Held[list[str]] = Held("Assumptions, in words.")
    hours: Held[_Numbers] = Held("Time since the beginning, at the end of each step [h].")
    hour_of_day: Held[_Numbers] = Held("Hour of the day by mean solar time, 0 to 24, by step [h].")
    month: Held[npt.NDArray[np.uint8]] = Held("Month of each step, 1 to 12; 0 if not known.")
    irradiance_w_m2: Held[_Numbers] = Held("Irradiance on the cells, by step [W/m2].")
    available_w: Held[_Numbers] = Held("Power at the maximum power point, by step [W].")
    power_w: Held[_Numbers] = Held("Power into the bank, by step [W].")
    bank_v: Held[_Numbers] = Held("Voltage across the bank, by step [V].")
    bank_a: Held[_Numbers] = Held("Current through the bank, by step [A].")
    sheath_c: Held[_Numbers] = Held("Sheath temperature of the hottest leg, by step [°C].")
    coil_c: Held[_Numbers] = Held("Coil temperature of the hottest leg, by step [°C].")
    terminal_c: Held[_Numbers | None] = Held(
        "Terminal temperature, by step [°C]; None if not known."
    )
    bed_mean_c: Held[_Numbers] = Held("Mean temperature of the fill by mass, by step [°C].")
    wall_c: Held[_Numbers] = Held("Wall temperature outside, hottest spot, by step [°C].")
    lid_c: Held[_Numbers] = Held("Lid temperature outside, hottest spot, by step [°C].")
    released_w: Held[_Numbers] = Held("Heat from the store by walls and fan, by step [W].")
    to_space_w: Held[_Numbers] = Held("Part of `released_w` that reaches the space, by step [W].")
    space_c: Held[_Numbers] = Held(
        "Temperature of the space, or of the air around a store that heats none, by step [°C]."
    )
    space_unheated_c: Held[_Numbers] = Held("Air temperature without the store, by step [°C].")
    outside_c: Held[_Numbers] = Held("Temperature of the air outside, by step [°C].")

    def sentences(self, *, units: str = "si") -> list[str]:
        """Return the result of the simulation in words.

        Parameters
        ----------
        units : {"si", "us"}
            Unit set of the numbers.

        Returns
        -------
        list of str
            Sentences, the most important first.

        Raises
        ------
        InvalidInput
            `units` is neither "si" nor "us".

        Examples
        --------
        >>> import heatmatch as hm
        >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> run = hm.simulate_day(circuit, year, month=1, days=1)
        >>> all(sentence.endswith(".") for sentence in run.sentences(units="us"))
        True
        """
        said: list[str] = self._call("sentences", units=units)
        return said

    def to_frame(self) -> _pd.DataFrame:
        """Return the simulation as a data frame, one row per thermal step, at its end.

        Returns
        -------
        pandas.DataFrame
            Shape (steps, 19); units are in the column names. `hours` [h] count from the beginning,
            `hour_of_day` [h] is mean solar time. An unknown terminal temperature is missing.

        Raises
        ------
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> run = hm.simulate_day(circuit, year, month=1, days=1)
        >>> run.to_frame().shape
        (288, 19)
        """
        return frames_day.day_to_frame(self)

    def months_frame(self) -> _pd.DataFrame:
        """Return the months of the simulation as a data frame, in the order of time.

        Returns
        -------
        pandas.DataFrame
            Shape (months, 12): days, energies [kWh/day], dark hours [h], lowest temperatures in
            the dark [°C], warming of the space by the store, and warming needed [K].

        Raises
        ------
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> run = hm.simulate_day(circuit, year, month=1, days=1)
        >>> run.months_frame().shape
        (1, 12)
        """
        return frames_day.months_to_frame(self)

    def __len__(self) -> int:
        return len(self._core)

    def __repr__(self) -> str:
        return plain_line(
            f"<DayRun {self.title}: {self.days:g} days, {self.energy.delivered_kwh:.4g} kWh>"
        )

    def __str__(self) -> str:
        return plain(day.day_text(self))

    def _repr_html_(self) -> str:
        return forms.day_html(self)


def simulate_day(
    candidate: Candidate,
    weather: Weather,
    *,
    month: int | None = None,
    days: int | None = None,
    air_shift_k: float = 0.0,
    electrical_step_s: float = 60.0,
    thermal_step_s: float = 300.0,
    warm_up_days: int = 3,
    start_c: float | None = None,
    conductivity: str = "typical",
    switches: str = "works",
    extraction_w_k: float = 0.0,
    extraction_from_hour: float = 0.0,
    extraction_until_hour: float = 24.0,
    air_around_c: float | None = None,
    progress: Callable[[float], object] | bool | None = None,
) -> DayRun:
    """Simulate a candidate over consecutive days.

    Parameters
    ----------
    candidate : Candidate
        The circuit; its installation needs a store.
    weather : Weather
        Rows without gaps, with the temperature of the air.
    month : int, optional
        Month to begin with, 1 to 12; by default the first row.
    days : int, optional
        Number of days, 1 to 3660; by default to the end of the month, or of the weather.
    air_shift_k : float
        Rise of the air temperature above the weather data [K].
    electrical_step_s, thermal_step_s : float
        Steps of the simulation [s], 1 to 3600.
    warm_up_days : int
        Repetitions of the first day before the simulation, 0 to 60.
    start_c : float, optional
        Temperature of the store at the beginning [°C], -60 to 1000; that of the air by default.
    conductivity : {"low", "typical", "high"}
        Conductivity of the fill.
    switches : {"works", "thermostat welded", "breaker welded"}
        State of the controls.
    extraction_w_k : float
        Heat extraction from the fill to the space by a fan or loop [W/K], 0 to 10000.
    extraction_from_hour, extraction_until_hour : float
        Hours of the day between which the fan or loop runs [h], 0 to 24.
    air_around_c : float, optional
        Constant air temperature around the store [°C], -60 to 80; no space is heated then.
    progress : callable or bool, optional
        True shows a bar; a callable is called with the completed share, 0 to 1.

    Returns
    -------
    DayRun
        Temperatures [°C], powers [W] and energies [kWh].

    Raises
    ------
    InvalidInput
        The circuit has no store, the weather has gaps, or a value is out of range.

    Notes
    -----
    Heat in the store by radius and height (water: one temperature). Thermostat and limit open the
    circuit only if they can break this DC. Sun through the covers of the space is left out.

    References
    ----------
    carslaw-jaeger : conduction in the fill

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> year = hm.Weather.from_installation(hm.demo())
    >>> hm.simulate_day(circuit, year, month=1, days=2).energy.delivered_kwh > 0
    True
    """
    made: DayRun = call(
        _core.simulate_day, candidate, weather, month=month, days=days, air_shift_k=air_shift_k,
        electrical_step_s=electrical_step_s, thermal_step_s=thermal_step_s,
        warm_up_days=warm_up_days, start_c=start_c, conductivity=conductivity, switches=switches,
        extraction_w_k=extraction_w_k, extraction_from_hour=extraction_from_hour,
        extraction_until_hour=extraction_until_hour, air_around_c=air_around_c, progress=progress,
    )  # fmt: skip
    return made
