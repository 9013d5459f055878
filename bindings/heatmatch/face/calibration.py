"""Conductivity of a fill and heat loss of a store, from a log."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held, call
from heatmatch.face.installation import Installation
from heatmatch.text import day, forms
from heatmatch.text.plain import plain

if TYPE_CHECKING:
    from collections.abc import Callable

    from heatmatch._core import Fitted
    from heatmatch._library import Candidate, Catalog, StoreLog


class Calibration(Face):
    """Conductivity of a fill and heat loss of a store, fitted to a log by ``calibrate``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> import pandas as pd
    >>> year = hm.Weather.from_installation(hm.demo())
    >>> run = hm.simulate_day(circuit, year, month=3, days=1, warm_up_days=0, start_c=15,
    ...                       air_around_c=15)
    >>> log = pd.DataFrame({"hours": run.hours, "power_w": run.power_w, "air_c": 15.0,
    ...                     "sheath_c": run.sheath_c, "lid_c": run.lid_c})
    >>> found = hm.calibrate(circuit, hm.StoreLog.from_frame(log))
    >>> found.medium
    'dry-sand'
    """

    __slots__ = ()
    _made_by = "calibrate(candidate, log)"

    k20_w_mk: Held[Fitted] = Held(
        "Conductivity of the fill at 20 °C with its standard error [W/mK]."
    )
    loss_factor: Held[Fitted] = Held(
        "Heat loss over that of the store as described [dimensionless]."
    )
    correlation: Held[float] = Held(
        "Correlation of the two fitted numbers, -1 to 1 [dimensionless]."
    )
    residual_k: Held[float] = Held("Root mean square of reading minus model after the fit [K].")
    residual_before_k: Held[float] = Held(
        "Root mean square of reading minus model before the fit [K]."
    )
    readings: Held[int] = Held("Number of temperatures used.")
    medium: Held[str] = Held("Id of the fill.")
    loss_factor_before: Held[float] = Held("Loss factor of the store as described [dimensionless].")
    sentences: Held[list[str]] = Held("Result in words, the most important first.")
    remarks: Held[list[str]] = Held("Limits of the result, in words.")

    def applied_to(self, installation: Installation, catalog: Catalog) -> Installation:
        """Return a copy of an installation that holds both fitted numbers.

        Parameters
        ----------
        installation : Installation
            Installation whose store was fitted; in the copy, the fill is a part of its own.
        catalog : Catalog
            Catalog that holds the fill.

        Returns
        -------
        Installation
            A changed copy.

        Raises
        ------
        InvalidInput
            The installation has no store, or one of another fill.

        Examples
        --------
        >>> import heatmatch as hm
        >>> import pandas as pd
        >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> run = hm.simulate_day(circuit, year, month=3, days=1, warm_up_days=0, start_c=15,
        ...                       air_around_c=15)
        >>> log = pd.DataFrame({"hours": run.hours, "power_w": run.power_w, "air_c": 15.0,
        ...                     "sheath_c": run.sheath_c, "lid_c": run.lid_c})
        >>> found = hm.calibrate(circuit, hm.StoreLog.from_frame(log))
        >>> fitted = found.applied_to(hm.demo(), hm.Catalog.starter())
        >>> round(fitted.store.loss_factor / found.loss_factor.value, 3)
        1.0
        """
        made: Installation = self._call("applied_to", installation, catalog)
        return made

    def __str__(self) -> str:
        return plain(day.calibration_text(self))

    def _repr_html_(self) -> str:
        return forms.calibration_html(self)


def calibrate(
    candidate: Candidate,
    log: StoreLog,
    *,
    progress: Callable[[float], object] | bool | None = None,
) -> Calibration:
    """Fit conductivity of the fill and heat loss of the store to a log.

    Parameters
    ----------
    candidate : Candidate
        The circuit whose store was read.
    log : StoreLog
        Power and temperatures; the store has one temperature at its first row.
    progress : callable or bool, optional
        True shows a bar; a callable is called with the completed share, 0 to 1.

    Returns
    -------
    Calibration
        Both numbers with their standard errors.

    Raises
    ------
    InvalidInput
        The circuit has no store, or the log has too few readings.

    Notes
    -----
    Minimizes ``sum(w (T_read - T_model(k20, loss))^2)`` by Gauss and Newton. The weight ``w`` of a
    reading [1/K2] follows from its noise and the error of the model there.

    References
    ----------
    carslaw-jaeger : conduction in the fill

    Examples
    --------
    >>> import heatmatch as hm
    >>> import pandas as pd
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> year = hm.Weather.from_installation(hm.demo())
    >>> run = hm.simulate_day(circuit, year, month=3, days=2, warm_up_days=0, start_c=15,
    ...                       air_around_c=15)
    >>> log = pd.DataFrame({"hours": run.hours, "power_w": run.power_w, "air_c": 15.0,
    ...                     "sheath_c": run.sheath_c, "lid_c": run.lid_c})
    >>> found = hm.calibrate(circuit, hm.StoreLog.from_frame(log))
    >>> found.applied_to(hm.demo(), hm.Catalog.starter()).store.loss_factor > 0
    True
    """
    made: Calibration = call(_core.calibrate, candidate, log, progress=progress)
    return made
