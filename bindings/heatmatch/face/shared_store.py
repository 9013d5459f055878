"""Circuits of one store, simulated together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import call

if TYPE_CHECKING:
    from heatmatch.face.candidate import Candidate
    from heatmatch.face.day_run import DayRun
    from heatmatch.face.stagnation import Stagnation
    from heatmatch.face.weather import Weather


def simulate_circuits(
    circuits: Sequence[Candidate],
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
) -> list[DayRun]:
    """Simulate all circuits of one store over consecutive days.

    Parameters
    ----------
    circuits : sequence of Candidate
        All circuits of the store, as ``assess_circuits`` returns them.
    weather : Weather
        Rows without gaps, with the temperature of the air. Each circuit has the weather of its
        group's plane and shade.
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
    list of DayRun
        One for each circuit. The store and the space are common: heat in the store, to the
        space and outside is that of all circuits.

    Raises
    ------
    InvalidInput
        The circuits were not assessed together, there is no store, the weather has gaps or no sky
        for the plane of a group, or a value is out of range.

    Notes
    -----
    Heat in the store by radius and height, from all legs at once; the sheath of a leg is above its
    ring by the sum over all legs of ``q'/(2 pi) (ln max(b, b_j) - ln d_j)``. Each circuit has
    its own controls.

    References
    ----------
    carslaw-jaeger : conduction in the fill

    Examples
    --------
    >>> import heatmatch as hm
    >>> house = hm.demo()
    >>> circuits = hm.assess_circuits(hm.Catalog.starter(), house)
    >>> year = hm.Weather.from_installation(house)
    >>> [len(run) for run in hm.simulate_circuits(circuits, year, month=1, days=1)]
    [288]
    """
    made: list[DayRun] = call(
        _core.simulate_circuits, circuits, weather, month=month, days=days,
        air_shift_k=air_shift_k, electrical_step_s=electrical_step_s, thermal_step_s=thermal_step_s,
        warm_up_days=warm_up_days, start_c=start_c, conductivity=conductivity, switches=switches,
        extraction_w_k=extraction_w_k, extraction_from_hour=extraction_from_hour,
        extraction_until_hour=extraction_until_hour, air_around_c=air_around_c, progress=progress,
    )  # fmt: skip
    return made


def simulate_stagnations(
    circuits: Sequence[Candidate], *, progress: Callable[[float], object] | bool | None = None
) -> list[Stagnation]:
    """Simulate fourteen cloudless days for all circuits of one store, all welded closed.

    Parameters
    ----------
    circuits : sequence of Candidate
        All circuits of the store, as ``assess_circuits`` returns them.
    progress : callable or bool, optional
        True shows a bar; a callable is called with the completed share, 0 to 1.

    Returns
    -------
    list of Stagnation
        One for each circuit: highest temperatures [°C] in the fortnight with the most energy for
        all of them together.

    Raises
    ------
    InvalidInput
        The circuits were not assessed together, or their site lacks a latitude.

    Notes
    -----
    Equations as in ``simulate_circuits``. Cells are in air of 10 °C, which overstates power in
    summer.

    References
    ----------
    carslaw-jaeger : conduction in the fill
    ineichen-perez-2002 : clear sky

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuits = hm.assess_circuits(hm.Catalog.starter(), hm.demo())
    >>> hm.simulate_stagnations(circuits)[0].run.days
    14.0
    """
    made: list[Stagnation] = call(_core.simulate_stagnations, circuits, progress=progress)
    return made
